// The shop the window has open, and word of what changed in it, so that no place has to know another.
#pragma once

#include <QObject>
#include <QString>
#include <string>

#include "shop.h"

namespace steadyturn {

class OpenShop : public QObject {
  Q_OBJECT
 public:
  explicit OpenShop(Shop shop, QObject* parent = nullptr);
  Shop& shop() { return shop_; }
  const std::string& address() const { return shop_.address(); }

 signals:
  void toolsChanged();  // added, held, released, retired, or checked: standings may differ
  void checksChanged(const QString& tool);
  void referencesChanged();
  void fastenersChanged();
  void peopleChanged();  // somebody signed in or out, or a role changed: another may do other things
  void benchChanged();   // a bench set-up: budgets may differ

 private:
  Shop shop_;
};

}  // namespace steadyturn
