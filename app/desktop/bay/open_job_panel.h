// The form that opens a job's sheet, in the place of the fastener's.
#pragma once

#include <QWidget>

#include "shop_views.h"

class QComboBox;
class QLineEdit;

namespace steadyturn {

class OpenJobPanel : public QWidget {
  Q_OBJECT
 public:
  explicit OpenJobPanel(QWidget* parent = nullptr);
  // As it was left, if it was left half typed.
  void begin(const std::vector<ServiceList>& services, const QString& by);
  void done();  // the job is open

 signals:
  void wanted(const JobDraft& draft);  // without its day
  void cancelled();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  JobDraft typed() const;
  QLineEdit *job_, *vehicle_, *by_;
  QComboBox* service_;
};

}  // namespace steadyturn
