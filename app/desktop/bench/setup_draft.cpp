#include "setup_draft.h"

#include <algorithm>

#include "text.h"

namespace steadyturn {
namespace {

QStringList asManyAsAsked(QStringList readings, SetupRun run) {
  readings.resize(static_cast<qsizetype>(rulesFor(run).readings));
  return readings;
}

TypedSeries asTyped(const TypedRun& run) {
  TypedSeries typed;
  for (const QStringList& readings : run.series) {
    auto& series = typed.emplace_back();
    for (const QString& reading : readings) series.push_back(asNumberText(reading));
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

SetupDraft::SetupDraft() {
  for (const SetupRun which : allSetupRuns) setSeries(which, rulesFor(which).series.front());
}

void SetupDraft::setSeries(SetupRun which, std::size_t count) {
  run(which).series.resize(count, asManyAsAsked({}, which));
}

int SetupDraft::typedReadings() const {
  int count = 0;
  for (const TypedRun& run : runs) count += run.typedReadings();
  return count;
}

bool SetupDraft::typed() const {
  return typedReadings() > 0 ||
         std::ranges::any_of(runs, [](const TypedRun& run) { return !run.span.trimmed().isEmpty(); });
}

BenchSetupDraft wholeDraft(const std::string& tool, const SetupDraft& draft) {
  BenchSetupDraft whole{.tool = tool,
                        .reference = toText(draft.reference),
                        .by = toText(draft.by.trimmed()),
                        .date = draft.date,
                        .unit = draft.unit,
                        .target = asNumberText(draft.target),
                        .readings = {},
                        .typedSpans = {},
                        .basis = toText(draft.basis.trimmed()),
                        .note = {}};
  for (const SetupRun which : allSetupRuns) {
    whole.readings[static_cast<std::size_t>(which)] = asTyped(draft.run(which));
    whole.typedSpans[static_cast<std::size_t>(which)] = asNumberText(draft.run(which).span);
  }
  return whole;
}

SetupDraft fromKept(const BenchSetupDraft& kept) {
  SetupDraft draft;
  draft.date = kept.date;
  draft.unit = kept.unit;
  draft.reference = fromText(kept.reference);
  draft.by = fromText(kept.by);
  draft.target = fromText(kept.target);
  draft.basis = fromText(kept.basis);
  for (const SetupRun which : allSetupRuns) {
    TypedRun& run = draft.run(which);
    const TypedSeries& series = kept.readings[static_cast<std::size_t>(which)];
    // The grid has the shape that the standard asks for.
    draft.setSeries(which, std::clamp(series.size(), rulesFor(which).series.front(), rulesFor(which).series.back()));
    for (std::size_t i = 0; i < std::min(series.size(), run.series.size()); ++i) {
      QStringList readings;
      for (const std::string& reading : series[i]) readings << fromText(reading);
      run.series[i] = asManyAsAsked(readings, which);
    }
    run.span = fromText(kept.typedSpans[static_cast<std::size_t>(which)]);
  }
  return draft;
}

}  // namespace steadyturn
