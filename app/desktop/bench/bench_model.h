// The bench without its window: the tool at hand, what is typed about its check, and what the shop makes of it at
// every keystroke. Each tool keeps its own draft until it is saved, on disk too.
#pragma once

#include <QObject>
#include <QTimer>
#include <map>
#include <optional>
#include <set>
#include <vector>

#include "bench_draft.h"
#include "draft_keeper.h"
#include "open_shop.h"
#include "reading_question.h"
#include "reason_line.h"

namespace steadyturn {

// What one reading or one set-point came to.
struct PointFigures {
  std::vector<std::optional<double>> deviations;          // one a reading cell
  std::vector<std::optional<ReadingQuestion>> questions;  // likewise
  std::optional<PointResult> result;
};

struct SavedCheck {
  Check check;
  std::optional<Date> due;
  DriftState state = DriftState::Unknown;
};

class BenchModel : public QObject {
  Q_OBJECT
 public:
  BenchModel(OpenShop& shop, DraftKeeper& keeper, QObject* parent = nullptr);

  const std::vector<Tool>& tools() const { return tools_; }
  const std::vector<Reference>& references() const { return references_; }
  const std::optional<Tool>& tool() const { return tool_; }
  const std::optional<CheckPlan>& plan() const { return plan_; }
  const BenchDraft& draft() const { return draft_; }

  // Puts the present draft aside and takes up the tool's own, if it has one.
  Result<void> pickTool(const std::string& id);
  // The heading fields; the shop evaluates anew.
  void setHeading(const BenchDraft& heading);  // points are left alone
  void setUnit(Unit unit);                     // set-points are restated, readings stay as typed
  void setTarget(std::size_t point, const QString& typed);
  void setReading(std::size_t point, std::size_t reading, const QString& typed);
  void addSetPoint();
  std::vector<BenchPoint> clearReadings();  // returns what stood there, for putting back
  void putBack(const std::vector<BenchPoint>& points);

  const std::vector<PointFigures>& figures() const { return figures_; }
  const std::optional<CheckResult>& result() const { return result_; }
  const std::vector<BudgetView>& budget() const { return budget_; }  // one a set-point with readings
  int questions() const;
  // What speaks against this reference for this tool on this day, the gravest first.
  const std::vector<ReferenceDoubt>& doubts() const { return doubts_; }
  const Problems& refusals() const { return refusals_; }  // why there is no result though readings were typed
  std::optional<Reference> reference() const;
  DecisionRule rule() const { return shop_.shop().policy().rule; }
  // The first cell whose text is no number; reading −1 is the set-point's own.
  struct Cell {
    int point = -1, reading = -1;
  };
  std::optional<Cell> firstBadCell() const;

  Result<SavedCheck> save();
  // Lays out the readings of a stored check; save() then stores a new record that replaces it. Refused while readings
  // of that tool are typed and not saved.
  Result<void> beginCorrection(std::int64_t check);
  // What is typed now, or still will be, replaces that check of the same tool.
  void becomeCorrection(std::int64_t check, const QString& reason);
  void setCorrectionReason(const QString& reason);
  void giveUpCorrection();
  // The tool's check of the draft's day, phase and direction, which keeps a second one from being stored.
  std::optional<std::int64_t> recordedAlready() const;
  void beginAsLeft();  // the same tool after adjusting: empty readings, phase as left
  // Holds, releases or retires a tool; a retired one leaves the bench.
  Result<void> change(ToolChange change, const std::string& tool, const std::string& reason);

  // A reading, or something else that is worth keeping, is finished: all that is typed goes to disk.
  void keepDraft();
  // The same when the window closes. False: it is not sure that everything is on disk.
  bool keepForNextStart();
  void discardDraft(const std::string& tool);
  std::vector<WaitingDraft> waitingDrafts() const;
  const Problems& draftTrouble() const { return draftTrouble_; }  // found: the tool whose draft can't be read
  std::vector<std::string> unsavedTools() const;                  // with readings typed and not saved

 signals:
  void choicesChanged();  // tools or references
  void toolPicked();      // plan, heading and points are new
  void pointsRebuilt();   // the grid has another shape or other texts
  void evaluated();       // figures(), result(), refusals(), budget(), doubts()

 private:
  void loadTools();
  void loadReferences();
  void loadDrafts();
  void propose();    // the plan's set-points
  void beginAnew();  // an empty draft of the tool under the bench's heading
  void show();       // all of the draft
  void empty();      // of readings
  void touched();
  void doubt();
  void evaluate();
  void compute();  // figures_, result_, budget_, refusals_
  void tellPoints();
  void ask(std::size_t point);
  void leaveTool();

  OpenShop& shop_;
  DraftKeeper& keeper_;
  std::vector<Tool> tools_;
  std::vector<Reference> references_;
  std::optional<Tool> tool_;
  std::optional<CheckPlan> plan_;
  BenchDraft draft_;
  BenchDraft heading_;  // what the next tool begins with: a correction's day and reference are not the bench's
  std::map<std::string, BenchDraft> putAside_;
  std::vector<PointFigures> figures_;
  std::optional<CheckResult> result_;
  Problems refusals_;
  std::vector<BudgetView> budget_;
  std::vector<ReferenceDoubt> doubts_;
  QTimer keepSoon_;  // what stands half typed is kept after a moment too
  bool touched_ = false;
  Problems draftTrouble_;
  std::set<std::string> onDisk_;  // tools with a draft there
};

}  // namespace steadyturn
