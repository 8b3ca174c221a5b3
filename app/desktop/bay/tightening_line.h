// What goes on record once the fastener is tight.
#pragma once

#include <QWidget>

#include "bay_model.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QPushButton;

namespace steadyturn {

class DateField;

class TighteningLine : public QWidget {
  Q_OBJECT
 public:
  explicit TighteningLine(Date today, QWidget* parent = nullptr);
  void showSeatCheck(const QString& seatCheck);          // of the fastener
  void showOption(const std::optional<Option>& option);  // the selected wrench
  TypedTightening typed() const;
  void readyForNext();  // job, vehicle and name stay
  QLineEdit* job() { return job_; }
  QLineEdit* by() { return by_; }

 signals:
  void recordWanted();

 private:
  QLineEdit *job_, *vehicle_, *setting_, *by_;
  QLabel* unit_;
  DateField* date_;
  QCheckBox* seat_;
  QPushButton* record_;
};

}  // namespace steadyturn
