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

QStringList emptySeries(SetupRun run) {
  QStringList series;
  for (std::size_t i = 0; i < rulesFor(run).readings; ++i) series << QString();
  return series;
}

TypedSeries asTyped(const TypedRun& run) {
  TypedSeries typed;
  for (const QStringList& readings : run.series) {
    auto& series = typed.emplace_back();
    for (const QString& reading : readings) {
      if (!reading.trimmed().isEmpty()) series.push_back(asNumberText(reading));
    }
  }
  return typed;
}

}  // namespace

int TypedRun::typedReadings() const {
  int count = 0;
  for (const QStringList& readings : series) {
    count += static_cast<int>(
        std::ranges::count_if(readings, [](const QString& text) { return !text.trimmed().isEmpty(); }));
  }
  return count;
}

SetupModel::SetupModel(OpenShop& shop, QObject* parent) : QObject(parent), shop_(shop) {}

Result<void> SetupModel::begin(const std::string& tool, const QString& reference, const QString& by, Date date,
                               Unit unit) {
  Result<BenchSetupPlan> plan = shop_.shop().planBenchSetup(tool);
  if (!plan) return tl::unexpected(plan.error());
  reference_ = reference;
  by_ = by;
  date_ = date;
  takeUp(tool, unit);
  plan_ = std::move(*plan);
  target_ = plan_->target.unit == unit ? fromText(writeNumber(plan_->target.value))
                                       : fromText(writeRounded(plan_->target.in(unit), 5));
  emit begun();
  emit changed();
  return {};
}

void SetupModel::takeUp(const std::string& tool, Unit unit) {
  if (tool == tool_ && unit == unit_ && typed()) return;
  if (typed()) putAside_[{tool_, unit_}] = {.runs = runs_, .basis = basis_};
  tool_ = tool;
  unit_ = unit;
  clear();
  if (const auto kept = putAside_.extract({tool, unit}); !kept.empty()) {
    runs_ = kept.mapped().runs;
    basis_ = kept.mapped().basis;
  }
}

std::vector<std::string> SetupModel::unsavedTools() const {
  std::vector<std::string> tools;
  if (typed()) tools.push_back(tool_);
  for (const auto& [key, kept] : putAside_) {
    if (!std::ranges::count(tools, key.first)) tools.push_back(key.first);
  }
  return tools;
}

void SetupModel::clear() {
  basis_.clear();
  for (const SetupRun run : allSetupRuns) {
    at(run) = {};
    at(run).series.assign(rulesFor(run).series.front(), emptySeries(run));
  }
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

bool SetupModel::typed() const {
  return std::ranges::any_of(
      runs_, [](const TypedRun& run) { return run.typedReadings() > 0 || !run.span.trimmed().isEmpty(); });
}

void SetupModel::setSeries(SetupRun run, std::size_t count) {
  if (at(run).series.size() == count) return;
  at(run).series.resize(count, emptySeries(run));
  emit seriesChanged(run);
  emit changed();
}

void SetupModel::setReading(SetupRun run, std::size_t series, std::size_t reading, const QString& typed) {
  at(run).series.at(series)[static_cast<qsizetype>(reading)] = typed;
  emit changed();
}

void SetupModel::setSpan(SetupRun run, const QString& typed) {
  at(run).span = typed;
  emit changed();
}

Result<BenchSetup> SetupModel::save() {
  BenchSetupDraft draft{.tool = tool_,
                        .reference = toText(reference_),
                        .by = toText(by_.trimmed()),
                        .date = date_,
                        .unit = unit_,
                        .target = asNumberText(target_),
                        .readings = {},
                        .typedSpans = {},
                        .basis = toText(basis_.trimmed()),
                        .note = {}};
  Problems problems;
  for (const SetupRun which : allSetupRuns) {
    const TypedRun& typed = run(which);
    if (typed.typedReadings() > 0) draft.readings[static_cast<std::size_t>(which)] = asTyped(typed);
    if (typed.span.trimmed().isEmpty()) continue;
    const Result<double> span = parseNumber(asNumberText(typed.span), std::string(rulesFor(which).name));
    if (span) {
      spanOf(draft.typedSpans, which) = *span;
    } else {
      problems.insert(problems.end(), span.error().begin(), span.error().end());
    }
  }
  if (!problems.empty()) return tl::unexpected(problems);
  Result<BenchSetup> saved = shop_.shop().recordBenchSetup(draft);
  if (!saved) return saved;
  clear();
  emit begun();
  emit changed();
  emit shop_.benchChanged();
  return saved;
}

}  // namespace steadyturn
