// The form for a new tool, in the place of the details.
#pragma once

#include <QFrame>

#include "tool_form.h"

class QComboBox;
class QGridLayout;
class QLineEdit;

namespace steadyturn {

class AddToolPanel : public QFrame {
  Q_OBJECT
 public:
  explicit AddToolPanel(QWidget* parent = nullptr);
  void begin();  // empties the form and takes the focus
  ToolForm typed() const;

 signals:
  void wanted(const ToolForm& form);
  void cancelled();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  QLineEdit* line(QGridLayout* grid, const QString& label, const QString& hint = {});
  void place(QGridLayout* grid, const QString& label, QWidget* field);
  void offerClasses();

  int cell_ = 0;
  QLineEdit *id_, *description_, *maker_, *serial_, *minimum_, *maximum_, *resolution_, *drive_, *interval_, *limit_;
  QComboBox *type_, *class_, *unit_;
};

}  // namespace steadyturn
