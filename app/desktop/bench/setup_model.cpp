#include "setup_model.h"

#include <algorithm>
#include <numeric>

#include "text.h"

namespace steadyturn {
namespace {

std::optional<double> readingOf(const QString& typed) {
  const Result<double> value = parseTorqueNumber(asNumberText(typed), "reading");
  return value && *value > 0 ? std::optional(*value) : std::nullopt;
}

double meanOf(const std::vector<double>& values) {
  return std::accumulate(values.begin(), values.end(), 0.0) / static_cast<double>(values.size());
}

}  // namespace

SetupModel::SetupModel(OpenShop& shop, DraftKeeper& keeper, QObject* parent)
    : QObject(parent), shop_(shop), keeper_(keeper) {
  loadDrafts();
  keepSoon_.setSingleShot(true);
  keepSoon_.setInterval(1000);
  connect(&keepSoon_, &QTimer::timeout, this, &SetupModel::keepDraft);
}

void SetupModel::loadDrafts() {
  draftTrouble_.clear();
  const Result<std::vector<BenchSetupDraft>> drafts = shop_.shop().setupDrafts();
  if (!drafts) {
    draftTrouble_ = drafts.error();
    return;
  }
  for (const BenchSetupDraft& kept : *drafts) {
    putAside_[kept.tool] = fromKept(kept);
    onDisk_.insert(kept.tool);
  }
}

Result<void> SetupModel::begin(const std::string& tool, const QString& reference, const QString& by, Date date,
                               Unit unit) {
  Result<BenchSetupPlan> plan = shop_.shop().planBenchSetup(tool);
  if (!plan) return tl::unexpected(plan.error());
  keepDraft();
  if (tool != tool_) {
    if (draft_.typed()) putAside_[tool_] = std::move(draft_);
    draft_ = {};
    tool_ = tool;
    if (auto kept = putAside_.extract(tool); !kept.empty()) draft_ = std::move(kept.mapped());
  }
  plan_ = std::move(*plan);
  heading_.reference = reference;
  heading_.by = by;
  heading_.date = date;
  heading_.unit = unit;
  heading_.target = plan_->target.unit == unit ? fromText(writeNumber(plan_->target.value))
                                               : fromText(writeRounded(plan_->target.in(unit), 5));
  if (!draft_.typed()) draft_ = heading_;
  if (draft_.reference.isEmpty()) draft_.reference = reference;
  if (draft_.by.isEmpty()) draft_.by = by;
  emit begun();
  emit changed();
  return {};
}

QString SetupModel::otherReference() const {
  return heading_.reference == draft_.reference ? QString() : heading_.reference;
}

std::vector<std::string> SetupModel::unsavedTools() const {
  std::vector<std::string> tools;
  if (typed()) tools.push_back(tool_);
  for (const auto& [tool, draft] : putAside_) tools.push_back(tool);
  return tools;
}

std::vector<WaitingDraft> SetupModel::waitingDrafts() const {
  std::vector<WaitingDraft> waiting;
  for (const auto& [tool, draft] : putAside_) {
    waiting.push_back({.setup = true, .tool = tool, .readings = draft.typedReadings(), .date = draft.date});
  }
  return waiting;
}

RunFigures SetupModel::figures(SetupRun which) const {
  const TypedRun& typed = run(which);
  RunFigures figures;
  if (const Result<double> span = parseNumber(asNumberText(typed.span), "span");
      span && !typed.span.trimmed().isEmpty()) {
    figures.span = *span;
  }
  std::vector<double> means;
  figures.complete = true;
  for (const QStringList& readings : typed.series) {
    std::vector<double> values;
    for (const QString& reading : readings) {
      if (const auto value = readingOf(reading)) values.push_back(*value);
    }
    figures.complete = figures.complete && values.size() == rulesFor(which).readings;
    figures.means.push_back(values.empty() ? std::nullopt : std::optional(meanOf(values)));
    if (!values.empty()) means.push_back(meanOf(values));
  }
  if (means.size() >= 2) {
    const auto [least, most] = std::ranges::minmax(means);
    figures.span = (most - least) / meanOf(means) * 100;
  }
  return figures;
}

void SetupModel::touched() {
  touched_ = true;
  keepSoon_.start();
  emit changed();
}

void SetupModel::readOn(const QString& reference) {
  draft_.reference = reference;
  touched();
  emit begun();
}

void SetupModel::setBasis(const QString& basis) {
  draft_.basis = basis;
  touched();
}

void SetupModel::setSeries(SetupRun run, std::size_t count) {
  if (draft_.run(run).series.size() == count) return;
  draft_.setSeries(run, count);
  emit seriesChanged(run);
  touched();
}

void SetupModel::setReading(SetupRun run, std::size_t series, std::size_t reading, const QString& typed) {
  draft_.run(run).series.at(series)[static_cast<qsizetype>(reading)] = typed;
  touched();
}

void SetupModel::setSpan(SetupRun run, const QString& typed) {
  draft_.run(run).span = typed;
  touched();
}

void SetupModel::beginAnew() {
  draft_ = heading_;
  emit begun();
  emit changed();
}

SetupDraft SetupModel::clear() {
  SetupDraft before = std::move(draft_);
  beginAnew();
  touched();
  keepDraft();
  return before;
}

void SetupModel::putBack(const SetupDraft& draft) {
  draft_ = draft;
  emit begun();
  touched();
  keepDraft();
}

Result<BenchSetup> SetupModel::save() {
  // The shop removes the draft with the set-up it stores; none may be written after it.
  keepSoon_.stop();
  const bool quiet = keeper_.settle(2000);
  Result<BenchSetup> saved = shop_.shop().recordBenchSetup(wholeDraft(tool_, draft_));
  if (!saved) {
    keepDraft();
    return saved;
  }
  touched_ = false;
  onDisk_.erase(tool_);
  if (!quiet) keeper_.discardSetup(tool_);
  beginAnew();
  emit shop_.benchChanged();
  return saved;
}

void SetupModel::keepDraft() {
  keepSoon_.stop();
  if (!touched_) return;
  touched_ = false;
  if (draft_.typed()) {
    onDisk_.insert(tool_);
    keeper_.keep(wholeDraft(tool_, draft_));
  } else if (onDisk_.erase(tool_) > 0) {
    keeper_.discardSetup(tool_);
  }
}

bool SetupModel::keepForNextStart() {
  keepDraft();
  return keeper_.settle(3000);
}

void SetupModel::discardDraft(const std::string& tool) {
  putAside_.erase(tool);
  const bool unreadable = !draftTrouble_.empty() && draftTrouble_.front().found == tool;
  if (onDisk_.erase(tool) > 0 || unreadable) keeper_.discardSetup(tool);
  if (unreadable) {
    keeper_.settle(2000);
    loadDrafts();
  }
}

}  // namespace steadyturn
