// The shop's people: accounts and their roles, the first lead of a shop that has none, and the way back for a lead
// who forgot the PIN.
#pragma once

#include <QStandardItemModel>
#include <QWidget>

#include "open_shop.h"
#include "shop_people.h"

class QComboBox;
class QDoubleSpinBox;
class QLabel;
class QLineEdit;
class QPushButton;
class QTableView;

namespace steadyturn {

class MessageLine;

class PeoplePage : public QWidget {
  Q_OBJECT
 public:
  explicit PeoplePage(QWidget* parent = nullptr);
  void begin(OpenShop& shop);

 signals:
  void left();
  void peopleChanged();
  void minutesChanged(double minutes);

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QWidget* makeAccounts();
  QWidget* makeNewcomer();
  QWidget* makeRecovery();
  QLineEdit* pinField(const QString& name);
  void refresh();
  void add();
  void changeRoleOfSelected();
  void setPinOfSelected();
  void closeSelected();
  void recover();
  void tell(const Result<void>& done, const QString& text);
  void tellCode(const QString& before, const std::string& code);
  std::string selected() const;
  // The two lines hold the same.
  bool same(const QLineEdit& pin, const QLineEdit& again);

  OpenShop* shop_ = nullptr;
  QStandardItemModel rows_;
  QLabel *title_, *explanation_;
  MessageLine* message_;
  QWidget *accounts_, *recovery_;
  QTableView* table_;
  QComboBox *newRole_ = nullptr, *role_ = nullptr;
  QLineEdit *name_ = nullptr, *pin_ = nullptr, *again_ = nullptr, *otherPin_ = nullptr, *otherAgain_ = nullptr,
            *code_ = nullptr, *codePin_ = nullptr, *codeAgain_ = nullptr;
  QDoubleSpinBox* minutes_;
};

}  // namespace steadyturn
