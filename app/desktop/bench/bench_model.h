// The bench without its window: the tool at hand, what is typed about its check, and what the shop makes of it at
// every keystroke. Each tool keeps its own draft until it is saved.
#pragma once

#include <QObject>
#include <map>
#include <optional>
#include <vector>

#include "bench_draft.h"
#include "open_shop.h"

namespace steadyturn {

// What one reading or one set-point came to.
struct PointFigures {
  std::vector<std::optional<double>> deviations;  // one a reading cell
  std::optional<PointResult> result;
};

struct SavedCheck {
  Check check;
  std::optional<Date> due;
};

class BenchModel : public QObject {
  Q_OBJECT
 public:
  explicit BenchModel(OpenShop& shop, QObject* parent = nullptr);

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
  const Problems& refusals() const { return refusals_; }  // why there is no result though readings were typed
  std::optional<Reference> reference() const;
  DecisionRule rule() const { return shop_.shop().policy().rule; }
  // The first cell whose text is no number; reading −1 is the set-point's own.
  struct Cell {
    int point = -1, reading = -1;
  };
  std::optional<Cell> firstBadCell() const;

  Result<SavedCheck> save();
  void beginAsLeft();  // the same tool after adjusting: empty readings, phase as left
  Result<void> hold(const std::string& tool, const std::string& reason);
  std::vector<std::string> unsavedTools() const;  // with readings typed and not saved

 signals:
  void choicesChanged();  // tools or references
  void toolPicked();      // plan, heading and points are new
  void pointsRebuilt();   // the grid has another shape or other texts
  void evaluated();       // figures(), result(), refusals()

 private:
  void loadTools();
  void loadReferences();
  void propose();  // the plan's set-points
  void evaluate();

  OpenShop& shop_;
  std::vector<Tool> tools_;
  std::vector<Reference> references_;
  std::optional<Tool> tool_;
  std::optional<CheckPlan> plan_;
  BenchDraft draft_;
  std::map<std::string, BenchDraft> putAside_;
  std::vector<PointFigures> figures_;
  std::optional<CheckResult> result_;
  Problems refusals_;
};

}  // namespace steadyturn
