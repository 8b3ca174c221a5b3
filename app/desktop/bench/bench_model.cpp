#include "bench_model.h"

#include <algorithm>

#include "text.h"

namespace steadyturn {

BenchModel::BenchModel(OpenShop& shop, QObject* parent) : QObject(parent), shop_(shop) {
  draft_.date = shop.shop().today();
  loadTools();
  loadReferences();
  connect(&shop, &OpenShop::toolsChanged, this, &BenchModel::loadTools);
  connect(&shop, &OpenShop::referencesChanged, this, &BenchModel::loadReferences);
}

void BenchModel::loadTools() {
  Result<std::vector<Tool>> tools = shop_.shop().tools();
  if (!tools) return;
  tools_ = std::move(*tools);
  std::erase_if(tools_, [](const Tool& tool) { return tool.status == ToolStatus::Retired; });
  emit choicesChanged();
}

void BenchModel::loadReferences() {
  Result<std::vector<Reference>> references = shop_.shop().references();
  if (!references) return;
  references_ = std::move(*references);
  emit choicesChanged();
}

Result<void> BenchModel::pickTool(const std::string& id) {
  if (tool_ && tool_->id == id) return {};
  Result<Tool> tool = shop_.shop().tool(id);
  if (!tool) return tl::unexpected(tool.error());
  Result<CheckPlan> plan = shop_.shop().planCheck(id);
  if (!plan) return tl::unexpected(plan.error());
  if (tool_ && draft_.typedReadings() > 0) putAside_[tool_->id] = draft_;
  const BenchDraft before = draft_;
  tool_ = std::move(*tool);
  plan_ = std::move(*plan);
  if (const auto kept = putAside_.find(id); kept != putAside_.end()) {
    draft_ = std::move(kept->second);
    putAside_.erase(kept);
  } else {
    // The bench, the day and the person are the same for the next tool; the rest begins anew.
    draft_ = {};
    draft_.date = before.date;
    draft_.reference = before.reference;
    draft_.by = before.by;
    draft_.temperature = before.temperature;
    draft_.humidity = before.humidity;
    draft_.unit = tool_->unit;
    propose();
  }
  emit toolPicked();
  emit pointsRebuilt();
  evaluate();
  return {};
}

void BenchModel::propose() {
  draft_.points.clear();
  for (const StatedTorque& target : plan_->setPoints) {
    BenchPoint point;
    // The plan's own number in the plan's own unit; restated only when read in another.
    point.target = target.unit == draft_.unit ? fromText(writeNumber(target.value))
                                              : fromText(writeRounded(target.in(draft_.unit), 5));
    point.readings.resize(static_cast<std::size_t>(std::max(1, plan_->readings)));
    draft_.points.push_back(std::move(point));
  }
}

void BenchModel::setHeading(const BenchDraft& heading) {
  const Unit unit = draft_.unit;
  std::vector<BenchPoint> points = std::move(draft_.points);
  draft_ = heading;
  draft_.unit = unit;
  draft_.points = std::move(points);
  evaluate();
}

void BenchModel::setUnit(Unit unit) {
  if (unit == draft_.unit) return;
  for (BenchPoint& point : draft_.points) {
    const Result<double> value = parseTorqueNumber(asNumberText(point.target), "target");
    if (value) point.target = fromText(writeRounded(StatedTorque{*value, draft_.unit}.in(unit), 5));
  }
  draft_.unit = unit;
  emit pointsRebuilt();
  evaluate();
}

void BenchModel::setTarget(std::size_t point, const QString& typed) {
  draft_.points.at(point).target = typed;
  evaluate();
}

void BenchModel::setReading(std::size_t point, std::size_t reading, const QString& typed) {
  draft_.points.at(point).readings.at(reading) = typed;
  evaluate();
}

void BenchModel::addSetPoint() {
  if (!plan_) return;
  BenchPoint point;
  point.readings.resize(static_cast<std::size_t>(std::max(1, plan_->readings)));
  draft_.points.push_back(std::move(point));
  emit pointsRebuilt();
  evaluate();
}

std::vector<BenchPoint> BenchModel::clearReadings() {
  std::vector<BenchPoint> before = draft_.points;
  if (plan_) propose();
  emit pointsRebuilt();
  evaluate();
  return before;
}

void BenchModel::putBack(const std::vector<BenchPoint>& points) {
  draft_.points = points;
  emit pointsRebuilt();
  evaluate();
}

void BenchModel::evaluate() {
  figures_.assign(draft_.points.size(), {});
  for (std::size_t p = 0; p < figures_.size(); ++p) figures_[p].deviations.resize(draft_.points[p].readings.size());
  result_.reset();
  refusals_.clear();
  if (tool_) {
    const ReadDraft read = readNumbers(tool_->id, draft_);
    if (!read.check.points.empty()) {
      Result<CheckResult> result = shop_.shop().evaluateDraft(read.check);
      if (!result) {
        refusals_ = result.error();
      } else {
        for (std::size_t i = 0; i < read.points.size() && i < result->points.size(); ++i) {
          PointFigures& figures = figures_[read.points[i]];
          figures.result = result->points[i];
          for (std::size_t r = 0; r < read.readings[i].size(); ++r) {
            figures.deviations[read.readings[i][r]] = result->points[i].deviationsPercent[r];
          }
        }
        result_ = std::move(*result);
      }
    }
  }
  emit evaluated();
}

std::optional<Reference> BenchModel::reference() const {
  const std::string id = toText(draft_.reference);
  const auto found = std::find_if(references_.begin(), references_.end(),
                                  [&id](const Reference& reference) { return reference.id == id; });
  return found == references_.end() ? std::nullopt : std::optional(*found);
}

std::optional<BenchModel::Cell> BenchModel::firstBadCell() const {
  for (std::size_t p = 0; p < draft_.points.size(); ++p) {
    const BenchPoint& point = draft_.points[p];
    if (problemWith(point.target, "target")) return Cell{static_cast<int>(p), -1};
    for (std::size_t r = 0; r < point.readings.size(); ++r) {
      if (problemWith(point.readings[r], "reading")) return Cell{static_cast<int>(p), static_cast<int>(r)};
    }
  }
  return std::nullopt;
}

Result<SavedCheck> BenchModel::save() {
  if (!tool_) return refuse({.field = "tool", .found = {}, .accepted = "pick the tool that is on the bench"});
  if (const auto bad = firstBadCell()) {
    const BenchPoint& point = draft_.points[static_cast<std::size_t>(bad->point)];
    const QString& typed = bad->reading < 0 ? point.target : point.readings[static_cast<std::size_t>(bad->reading)];
    return refuse(*problemWith(typed, bad->reading < 0 ? "set-point" : "reading"));
  }
  Problems problems;
  const auto checkNumber = [&problems](const QString& typed, const char* field) {
    if (typed.trimmed().isEmpty()) return;
    const Result<double> number = parseNumber(asNumberText(typed), field);
    if (!number) problems.push_back(number.error().front());
  };
  checkNumber(draft_.temperature, "temperature");
  checkNumber(draft_.humidity, "humidity");
  if (!problems.empty()) return tl::unexpected(problems);
  Result<Check> check = shop_.shop().recordCheck(readNumbers(tool_->id, draft_).check);
  if (!check) return tl::unexpected(check.error());
  const std::string id = tool_->id;
  putAside_.erase(id);
  draft_.note.clear();
  clearReadings();
  SavedCheck saved{std::move(*check), std::nullopt};
  if (const Result<ToolDrift> drift = shop_.shop().drift(id, shop_.shop().today())) saved.due = drift->dueDate;
  emit shop_.toolsChanged();
  emit shop_.checksChanged(fromText(id));
  return saved;
}

void BenchModel::beginAsLeft() {
  draft_.phase = Phase::AsLeft;
  emit toolPicked();
  clearReadings();
}

Result<void> BenchModel::hold(const std::string& tool, const std::string& reason) {
  Result<void> held = shop_.shop().holdTool(tool, reason);
  if (held) emit shop_.toolsChanged();
  return held;
}

std::vector<std::string> BenchModel::unsavedTools() const {
  std::vector<std::string> tools;
  if (tool_ && draft_.typedReadings() > 0) tools.push_back(tool_->id);
  for (const auto& [tool, draft] : putAside_) tools.push_back(tool);
  return tools;
}

}  // namespace steadyturn
