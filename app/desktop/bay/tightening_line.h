// What goes on record once the fastener is tight.
#pragma once

#include <QWidget>

#include "bay_model.h"

class QCheckBox;
class QLabel;
class QLineEdit;
class QHBoxLayout;
class QPushButton;

namespace steadyturn {

class DateField;

class TighteningLine : public QWidget {
  Q_OBJECT
 public:
  explicit TighteningLine(Date today, QWidget* parent = nullptr);
  void showFastener(const Fastener& fastener);  // what to tick besides the torque
  void showJob(const QString& job, const QString& vehicle);
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
  QCheckBox *seat_, *seal_;
  QHBoxLayout* ticks_;
  std::vector<QCheckBox*> stages_;
  QPushButton* record_;
};

}  // namespace steadyturn
