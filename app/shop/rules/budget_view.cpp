#include "budget_view.h"

#include <fmt/format.h>

#include <algorithm>

#include "bench_spans.h"
#include "risk_words.h"

namespace steadyturn {

namespace {

std::string fromReference(const Reference& reference) {
  if (reference.certificate.empty()) return fmt::format("as entered for {}, no certificate on record", reference.id);
  std::string words = fmt::format("from the certificate of {}, {}", reference.id, reference.certificate);
  if (reference.calibrated) words += " of " + writeDate(*reference.calibrated);
  return words;
}

std::optional<std::string> fromRun(SetupRun run, const Check& check, const BudgetBasis& basis) {
  const auto& span = spanOf(check.variation, run);
  if (!span) return std::nullopt;
  const auto* setup = setupBehind(*basis.setups, run, *span, check.date);
  return setup == nullptr ? "as recorded with the check; no set-up of this bench has it" : originInWords(*setup, run);
}

// Where a source's figure came from; nothing when it was not evaluated.
std::optional<std::string> originOf(std::string_view source, const PointResult& point, const Check& check,
                                    const BudgetBasis& basis) {
  for (const auto run : allSetupRuns) {
    if (source == rulesFor(run).name) return fromRun(run, check, basis);
  }
  if (source == "reference" && basis.reference != nullptr) return fromReference(*basis.reference);
  if (source == "resolution" && basis.tool->resolution)
    return fmt::format("the tool's graduation, {}", writeTorque(*basis.tool->resolutionTorque()));
  if (source == "repeatability" && point.repeatabilityPercent)
    return fmt::format("from the {} readings here", point.deviationsPercent.size());
  return std::nullopt;
}

BudgetView viewOf(const PointResult& point, const Check& check, const CheckResult& result, const BudgetBasis& basis) {
  BudgetView view{.target = point.target,
                  .lines = {},
                  .standardUncertaintyPercent = point.standardUncertaintyPercent,
                  .coverageFactor = point.coverageFactor,
                  .expandedUncertaintyPercent = point.expandedUncertaintyPercent,
                  .meanDeviationPercent = point.meanDeviationPercent,
                  .referenceErrorPercent = check.referenceUncertainty.errorPercent,
                  .intervalPercent = point.intervalPercent,
                  .limitPercent = result.limitPercent,
                  .rule = check.rule,
                  .verdict = point.verdict,
                  .conformityProbability = point.conformityProbability,
                  .risk = {}};
  const double variance = point.standardUncertaintyPercent * point.standardUncertaintyPercent;
  for (const auto& entry : point.budget) {
    const auto origin = originOf(entry.source, point, check, basis);
    const double own = entry.standardUncertaintyPercent * entry.standardUncertaintyPercent;
    view.lines.push_back({.source = std::string(entry.source),
                          .standardUncertaintyPercent = entry.standardUncertaintyPercent,
                          .sharePercent = variance > 0 ? own / variance * 100 : 0,
                          .evaluated = origin.has_value(),
                          .origin = origin.value_or("not evaluated, counts as 0")});
  }
  const bool missing = !std::ranges::all_of(view.lines, &BudgetLine::evaluated);
  view.risk = riskInWords(point.verdict, point.target, point.conformityProbability, result.limitPercent, missing);
  return view;
}

}  // namespace

std::vector<BudgetView> budgetViews(const Check& check, const CheckResult& result, const BudgetBasis& basis) {
  std::vector<BudgetView> views;
  for (const auto& point : result.points) views.push_back(viewOf(point, check, result, basis));
  return views;
}

}  // namespace steadyturn
