// The form for a specification, in the place of the fastener's sheet: a new one, or a new revision with its reason.
// What its thread could sensibly take stands there while it is typed, and a doubtful unit is asked about before
// saving.
#pragma once

#include <QWidget>
#include <functional>

#include "fastener_form.h"
#include "shop_limit.h"
#include "shop_views.h"

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace steadyturn {

class LimitLine;
class MessageLine;

class FastenerPanel : public QWidget {
  Q_OBJECT
 public:
  using Ask = std::function<FastenerQuestions(const Fastener&)>;
  explicit FastenerPanel(Ask ask, QWidget* parent = nullptr);
  void begin(const QString& by);  // a new one
  void beginRevision(const Fastener& from, const QString& by);
  void beginLimit(const Fastener& from, const QString& by);  // a revision that gives a plastic part its limit
  void sayProblems(const Problems& problems);

 signals:
  void wanted(const Fastener& fastener, const std::optional<std::string>& reason);
  void cancelled();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void line(QGridLayout* grid, const char* field, const QString& label, const QString& hint = {});
  void place(QGridLayout* grid, const QString& label, QWidget* field);
  void showForm(const FastenerForm& form);
  FastenerForm typed() const;
  void question();
  void takeOverLimit(const LimitProposal& proposal);
  void limitTyped();
  void save();

  Ask ask_;
  std::optional<Fastener> from_;  // the revision that is changed
  bool questioned_ = false;       // the question at hand was seen and Save was pressed once
  QString takenBasis_;            // of a limit by trial that stands in the form
  int cell_ = 0;
  std::map<std::string, QLineEdit*> lines_;
  QComboBox* unit_;
  QCheckBox* renew_;
  QLabel *title_, *sensible_;
  MessageLine* questions_;
  LimitLine* limit_;
  MessageLine* message_;
};

}  // namespace steadyturn
