// The form for a specification, in the place of the fastener's sheet: a new one, or a new revision with its reason.
// What its thread could sensibly take stands there while it is typed, and a doubtful unit is asked about before
// saving.
#pragma once

#include <QWidget>
#include <functional>

#include "fastener_form.h"
#include "limit_line.h"
#include "shop_limit.h"
#include "shop_views.h"

class QCheckBox;
class QComboBox;
class QGridLayout;
class QLabel;
class QLineEdit;

namespace steadyturn {

class MessageLine;

class FastenerPanel : public QWidget {
  Q_OBJECT
 public:
  using Ask = std::function<FastenerQuestions(const Fastener&)>;
  explicit FastenerPanel(Ask ask, QWidget* parent = nullptr);
  // Each as it was left, if it was left half typed.
  void begin(const QString& by);  // a new one
  void beginRevision(const Fastener& from, const QString& by);
  void beginLimit(const Fastener& from, const QString& by);  // a revision that gives a plastic part its limit
  void done();                                               // it is on record
  void sayProblems(const Problems& problems);

 signals:
  void wanted(const Fastener& fastener, const std::optional<std::string>& reason);
  void cancelled();

 protected:
  void keyPressEvent(QKeyEvent* event) override;

 private:
  void line(QGridLayout* grid, const char* field, const QString& label, const QString& hint = {});
  void place(QGridLayout* grid, const QString& label, QWidget* field);
  struct Entry {
    std::optional<Fastener> from;  // the revision that is changed
    FastenerForm form;
    LimitLine::Typed trial;
  };
  void start(Entry fresh, const QString& by);
  void show(const Entry& entry);
  void showLeft(const Entry& left);
  void keepTyped();
  void startAnew();
  std::string subject() const { return fresh_.from ? fresh_.from->id : std::string(); }
  FastenerForm typed() const;
  void question();
  void takeOverLimit(const LimitProposal& proposal);
  void limitTyped();
  void save();

  Ask ask_;
  Entry fresh_;                        // what it began with
  std::map<std::string, Entry> left_;  // half typed, by the mark; "" is a new one
  bool questioned_ = false;            // the question at hand was seen and Save was pressed once
  QString takenBasis_;                 // of a limit by trial that stands in the form
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
