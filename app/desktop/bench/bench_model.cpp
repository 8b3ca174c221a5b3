#include "bench_model.h"

#include <algorithm>

#include "text.h"

namespace steadyturn {

BenchModel::BenchModel(OpenShop& shop, DraftKeeper& keeper, QObject* parent)
    : QObject(parent), shop_(shop), keeper_(keeper) {
  draft_.date = shop.shop().today();
  loadTools();
  loadReferences();
  loadDrafts();
  keepSoon_.setSingleShot(true);
  keepSoon_.setInterval(1000);
  connect(&keepSoon_, &QTimer::timeout, this, &BenchModel::keepDraft);
  connect(&shop, &OpenShop::toolsChanged, this, &BenchModel::loadTools);
  connect(&shop, &OpenShop::referencesChanged, this, &BenchModel::loadReferences);
  connect(&shop, &OpenShop::benchChanged, this, &BenchModel::evaluate);
}

void BenchModel::loadTools() {
  Result<std::vector<Tool>> tools = shop_.shop().tools();
  if (!tools) return;
  tools_ = std::move(*tools);
  std::erase_if(tools_, [](const Tool& tool) { return tool.status == ToolStatus::Retired; });
  for (const Tool& tool : tools_) {
    if (tool_ && tool_->id == tool.id) tool_ = tool;  // held or released elsewhere
  }
  emit choicesChanged();
}

void BenchModel::loadReferences() {
  Result<std::vector<Reference>> references = shop_.shop().references();
  if (!references) return;
  references_ = std::move(*references);
  emit choicesChanged();
}

void BenchModel::loadDrafts() {
  draftTrouble_.clear();
  const Result<std::vector<SavedDraft>> drafts = shop_.shop().drafts();
  if (!drafts) {
    draftTrouble_ = drafts.error();
    return;
  }
  for (const SavedDraft& saved : *drafts) {
    putAside_[saved.draft.tool] = fromKept(saved.draft);
    onDisk_.insert(saved.draft.tool);
  }
}

Result<void> BenchModel::pickTool(const std::string& id) {
  if (tool_ && tool_->id == id) return {};
  Result<Tool> tool = shop_.shop().tool(id);
  if (!tool) return tl::unexpected(tool.error());
  Result<CheckPlan> plan = shop_.shop().planCheck(id);
  if (!plan) return tl::unexpected(plan.error());
  keepDraft();
  if (!draft_.corrects) heading_ = draft_;
  if (tool_ && draft_.unsaved()) putAside_[tool_->id] = draft_;
  tool_ = std::move(*tool);
  plan_ = std::move(*plan);
  if (const auto kept = putAside_.find(id); kept != putAside_.end()) {
    draft_ = std::move(kept->second);
    putAside_.erase(kept);
  } else {
    beginAnew();
  }
  show();
  return {};
}

// The bench, the day and the person are the same for the next check; the rest begins anew.
void BenchModel::beginAnew() {
  draft_ = {};
  draft_.date = heading_.date;
  draft_.reference = heading_.reference;
  draft_.by = heading_.by;
  draft_.temperature = heading_.temperature;
  draft_.humidity = heading_.humidity;
  draft_.unit = tool_->unit;
  propose();
}

void BenchModel::show() {
  doubt();
  compute();
  emit toolPicked();
  tellPoints();
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
  std::optional<Correction> corrects = std::move(draft_.corrects);
  draft_ = heading;
  draft_.corrects = std::move(corrects);
  draft_.unit = unit;
  draft_.points = std::move(points);
  doubt();
  touched();
  evaluate();
}

void BenchModel::setUnit(Unit unit) {
  if (unit == draft_.unit) return;
  for (BenchPoint& point : draft_.points) {
    const Result<double> value = parseTorqueNumber(asNumberText(point.target), "target");
    if (value) point.target = fromText(writeRounded(StatedTorque{*value, draft_.unit}.in(unit), 5));
  }
  draft_.unit = unit;
  touched();
  compute();
  tellPoints();
}

void BenchModel::setTarget(std::size_t point, const QString& typed) {
  draft_.points.at(point).target = typed;
  touched();
  evaluate();
}

void BenchModel::setReading(std::size_t point, std::size_t reading, const QString& typed) {
  draft_.points.at(point).readings.at(reading) = typed;
  touched();
  evaluate();
}

void BenchModel::addSetPoint() {
  if (!plan_) return;
  BenchPoint point;
  point.readings.resize(static_cast<std::size_t>(std::max(1, plan_->readings)));
  draft_.points.push_back(std::move(point));
  compute();
  tellPoints();
}

std::vector<BenchPoint> BenchModel::clearReadings() {
  std::vector<BenchPoint> before = draft_.points;
  empty();
  touched();
  keepDraft();
  return before;
}

void BenchModel::empty() {
  if (plan_) propose();
  compute();
  tellPoints();
}

void BenchModel::putBack(const std::vector<BenchPoint>& points) {
  draft_.points = points;
  touched();
  keepDraft();
  compute();
  tellPoints();
}

void BenchModel::doubt() {
  doubts_.clear();
  if (!tool_ || draft_.reference.isEmpty()) return;
  if (auto doubts = shop_.shop().referenceDoubts(tool_->id, toText(draft_.reference), draft_.date))
    doubts_ = std::move(*doubts);
}

void BenchModel::evaluate() {
  compute();
  emit evaluated();
}

// The grid is built anew from figures that fit it.
void BenchModel::tellPoints() {
  emit pointsRebuilt();
  emit evaluated();
}

void BenchModel::compute() {
  figures_.assign(draft_.points.size(), {});
  for (std::size_t p = 0; p < figures_.size(); ++p) {
    figures_[p].deviations.resize(draft_.points[p].readings.size());
    ask(p);
  }
  result_.reset();
  budget_.clear();
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
        if (auto budget = shop_.shop().budgetOf(read.check)) budget_ = std::move(*budget);
      }
    }
  }
}

void BenchModel::ask(std::size_t point) {
  const BenchPoint& typed = draft_.points[point];
  auto& questions = figures_[point].questions;
  questions.resize(typed.readings.size());
  const Result<double> target = parseTorqueNumber(asNumberText(typed.target), "target");
  if (!plan_ || !target || *target <= 0) return;
  std::vector<std::optional<double>> values;
  for (const QString& reading : typed.readings) {
    const Result<double> value = parseTorqueNumber(asNumberText(reading), "reading");
    values.push_back(value && *value > 0 ? std::optional(*value) : std::nullopt);
  }
  for (std::size_t r = 0; r < values.size(); ++r) {
    if (!values[r]) continue;
    std::vector<double> others;
    for (std::size_t other = 0; other < values.size(); ++other) {
      if (other != r && values[other]) others.push_back(*values[other]);
    }
    questions[r] =
        questionReading(toText(typed.readings[r].trimmed()), {*target, draft_.unit}, others, plan_->limitPercent);
  }
}

int BenchModel::questions() const {
  int count = 0;
  for (const PointFigures& figures : figures_) {
    for (const auto& question : figures.questions) count += question ? 1 : 0;
  }
  return count;
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
  // The shop removes the draft with the check it stores; none may be written after it.
  keepSoon_.stop();
  touched_ = false;
  const bool quiet = keeper_.settle(2000);
  const CheckDraft typed = readNumbers(tool_->id, draft_).check;
  const bool correcting = draft_.corrects.has_value();
  Result<Check> check =
      correcting ? shop_.shop().correctCheck(draft_.corrects->check, typed, toText(draft_.corrects->reason.trimmed()))
                 : shop_.shop().recordCheck(typed);
  if (!check) return tl::unexpected(check.error());
  const std::string id = tool_->id;
  if ((onDisk_.erase(id) > 0 && correcting) || !quiet) keeper_.discard(id);
  putAside_.erase(id);
  if (correcting) {
    beginAnew();
    show();
  } else {
    draft_.note.clear();
    empty();
  }
  SavedCheck saved{std::move(*check), std::nullopt};
  if (const Result<ToolDrift> drift = shop_.shop().drift(id, shop_.shop().today())) {
    saved.due = drift->dueDate;
    saved.state = drift->state;
  }
  emit shop_.toolsChanged();
  emit shop_.checksChanged(fromText(id));
  return saved;
}

void BenchModel::beginAsLeft() {
  draft_.phase = Phase::AsLeft;
  emit toolPicked();
  empty();
}

Result<void> BenchModel::change(ToolChange change, const std::string& tool, const std::string& reason) {
  Result<void> changed = change == ToolChange::Hold      ? shop_.shop().holdTool(tool, reason)
                         : change == ToolChange::Release ? shop_.shop().releaseTool(tool, reason)
                                                         : shop_.shop().retireTool(tool, reason);
  if (!changed) return changed;
  emit shop_.toolsChanged();
  if (change == ToolChange::Retire) {
    discardDraft(tool);
    if (tool_ && tool_->id == tool) leaveTool();
  }
  return changed;
}

void BenchModel::leaveTool() {
  tool_.reset();
  plan_.reset();
  draft_.points.clear();
  doubts_.clear();
  touched_ = false;
  compute();
  emit toolPicked();
  tellPoints();
}

void BenchModel::touched() {
  if (draft_.corrects) draft_.corrects->untouched = false;
  touched_ = true;
  keepSoon_.start();
}

void BenchModel::keepDraft() {
  keepSoon_.stop();
  if (!touched_ || !tool_) return;
  touched_ = false;
  if (draft_.typedReadings() > 0) {
    onDisk_.insert(tool_->id);
    keeper_.keep(wholeDraft(tool_->id, draft_));
  } else if (onDisk_.erase(tool_->id) > 0) {
    keeper_.discard(tool_->id);
  }
}

bool BenchModel::keepForNextStart() {
  keepDraft();
  return keeper_.settle(3000);
}

void BenchModel::discardDraft(const std::string& tool) {
  putAside_.erase(tool);
  const bool unreadable = !draftTrouble_.empty() && draftTrouble_.front().found == tool;
  if (onDisk_.erase(tool) > 0 || unreadable) keeper_.discard(tool);
  if (unreadable) {
    keeper_.settle(2000);
    loadDrafts();
  }
}

std::vector<WaitingDraft> BenchModel::waitingDrafts() const {
  std::vector<WaitingDraft> waiting;
  for (const auto& [tool, draft] : putAside_) {
    if (draft.typedReadings() > 0)
      waiting.push_back({.setup = false, .tool = tool, .readings = draft.typedReadings(), .date = draft.date});
  }
  return waiting;
}

std::vector<std::string> BenchModel::unsavedTools() const {
  std::vector<std::string> tools;
  if (tool_ && draft_.unsaved()) tools.push_back(tool_->id);
  for (const auto& [tool, draft] : putAside_) tools.push_back(tool);
  return tools;
}

}  // namespace steadyturn
