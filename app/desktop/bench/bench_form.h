// The heading of a check: tool, reference, day, phase, direction, unit, who, surroundings, note.
#pragma once

#include <QWidget>

#include "bench_draft.h"
#include "unit.h"

class QComboBox;
class QGridLayout;
class QLineEdit;

namespace steadyturn {

class BenchModel;
class DateField;
class Picker;

class BenchForm : public QWidget {
  Q_OBJECT
 public:
  explicit BenchForm(BenchModel& model, QWidget* parent = nullptr);
  Picker* tool() { return tool_; }
  Picker* reference() { return reference_; }
  QLineEdit* by() { return by_; }
  void setUnit(Unit unit);  // as if it were chosen

 signals:
  void toolWanted(const QString& id);
  void entered();  // tool or reference was chosen by Enter: on to what comes next
  void notFound(const QString& what, const QString& typed);

 private:
  void place(QGridLayout* grid, int row, int column, int span, const QString& label, QWidget* field);
  void offerChoices();
  void showDraft();
  void tellModel();

  BenchModel& model_;
  bool showing_ = false;  // the model's draft is being shown: the fields' signals are not typing
  Picker *tool_, *reference_;
  DateField* date_;
  QComboBox *phase_, *direction_, *unit_;
  QLineEdit *by_, *temperature_, *humidity_, *note_;
};

}  // namespace steadyturn
