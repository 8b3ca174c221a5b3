// The service lists without their page: each as the shop has it, and what was typed over it and is not saved yet.
#pragma once

#include <QObject>
#include <QString>
#include <map>
#include <vector>

#include "open_shop.h"
#include "service_drafts.h"

namespace steadyturn {

class ServiceModel : public QObject {
  Q_OBJECT
 public:
  explicit ServiceModel(OpenShop& shop, QObject* parent = nullptr);
  Result<void> read();  // the shop's lists anew; what was typed stays

  std::vector<std::string> names() const;  // saved, or typed over one that was
  bool unsaved(const std::string& name) const { return drafts_.contains(name); }
  QString whyNot();  // whoever works here may not change a list; empty: may

  void take(const std::string& name);  // to be shown and changed; "": a new list
  const std::string& taken() const { return taken_; }
  ServiceList list() const;  // the taken one as typed
  std::vector<Fastener> fasteners();

  void setName(const std::string& name);
  int add(const std::string& mark);  // its row; one that is on the list already stays where it is
  void remove(int row);
  int move(int row, int by);  // where it is then
  void giveUp();              // what was typed
  void bringBack();           // what was given up last, and it is the taken one
  // The list that saving would put out of its place without this one having begun from it: another of that name, or
  // one that somebody else has changed since.
  std::optional<ServiceList> inTheWay();
  Result<void> save();

 signals:
  void peopleChanged();

 private:
  std::optional<ServiceList> saved(const std::string& name) const;
  void change(ServiceList typed);

  OpenShop& shop_;
  std::vector<ServiceList> saved_;
  ServiceDrafts drafts_;
  std::optional<ServiceDraft> givenUp_;
  std::string taken_;
  std::map<std::string, Fastener> known_;
};

}  // namespace steadyturn
