// Picks one of the shop's records by typing any part of its id or description.
#pragma once

#include <QComboBox>
#include <QPointer>
#include <vector>

#include "suggestions.h"

namespace steadyturn {

class Picker : public QComboBox {
  Q_OBJECT
 public:
  struct Item {
    QString id;
    QString label;  // what else helps to recognise it
    bool operator==(const Item&) const = default;
  };
  Picker(const QString& accessibleName, const QString& hint, QWidget* parent = nullptr);
  void setItems(std::vector<Item> items);  // the picked one stays, if it is still there
  QString pickedId() const { return picked_; }
  void pick(const QString& id);  // from the program: no signal; an unknown id empties the field
  // What is typed: its id, or "" when it names nothing here.
  QString resolve(const QString& typed) const;

 signals:
  void picked(const QString& id);  // another one than before
  void entered();                  // chosen by Enter or from the list, be it the same: work may go on
  void unknown(const QString& typed);

 protected:
  void keyPressEvent(QKeyEvent* event) override;
  void focusOutEvent(QFocusEvent* event) override;

 private:
  void suggest(const QString& typed);
  void enter(const QString& typed);
  void closeSuggestions();
  void settle();
  void showPicked();
  std::vector<Item> items_;
  QString picked_;
  QPointer<Suggestions> suggestions_;  // the window owns it
};

}  // namespace steadyturn
