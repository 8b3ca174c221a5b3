#include "certificate_results.h"

#include <fmt/format.h>

#include <algorithm>

#include "certificate_words.h"

namespace steadyturn {
namespace {

constexpr std::size_t readingsInARow = 10;

// Expanded uncertainties in this trade lie between 0.1 % and a few %: three decimals keep two digits of the smallest.
std::string percent(double value) { return fmt::format("{:.3f}", value); }

// Always with its sign, but a zero has none.
std::string deviation(double value, int decimals = 3) {
  const auto text = fmt::format("{:+.{}f}", value, decimals);
  return text.find_first_of("123456789") == std::string::npos ? text.substr(1) : text;
}

// Nothing measured is certain: 100.0 would say too much.
std::string probability(double value) {
  if (value > 0.999) return ">99.9";
  if (value < 0.001) return "<0.1";
  return fmt::format("{:.1f}", 100 * value);
}

double expanded(const CheckPoint& point) { return 2 * point.standardUncertainty; }

Column right(std::string heading) { return {std::move(heading), Align::Right}; }
Column left(std::string heading) { return {std::move(heading), Align::Left}; }

const CheckPoint* pointAt(const Check& check, StatedTorque target) {
  for (const auto& point : check.points) {
    if (point.target.torque() == target.torque()) return &point;
  }
  return nullptr;
}

}  // namespace

TableBlock resultsTable(const Check& check) {
  TableBlock table{.heading = "Results",
                   .columns = {left("set-point"), right("readings"), right("mean deviation, %"), right("spread s, %"),
                               right("w, %"), right("W (k = 2), %"), right("interval W′, %"),
                               right("within limits, %"), left("verdict")},
                   .rows = {}};
  for (const auto& point : check.points) {
    table.rows.push_back({writeTorque(point.target), std::to_string(point.readings.size()),
                          deviation(point.meanDeviation), point.repeatability ? percent(*point.repeatability) : "",
                          percent(point.standardUncertainty), percent(expanded(point)), percent(point.interval),
                          probability(point.conformityProbability), std::string(writeVerdict(point.verdict))});
  }
  return table;
}

TableBlock readingsTable(const Check& check, const CheckResult& recomputed) {
  TableBlock table{.heading = "Readings of the reference standard, as taken",
                   .columns = {left("set-point"), left("what")},
                   .rows = {}};
  std::size_t most = 1;
  for (const auto& point : check.points) most = std::max(most, point.readings.size());
  const std::size_t across = std::min(most, readingsInARow);
  for (std::size_t i = 0; i < across; ++i) table.columns.push_back(right(std::to_string(i + 1)));
  for (std::size_t i = 0; i < check.points.size(); ++i) {
    const auto& point = check.points[i];
    const auto& deviations = recomputed.points[i].deviationsPercent;
    for (std::size_t from = 0; from < point.readings.size(); from += across) {
      std::vector<std::string> readings{writeTorque(point.target),
                                        fmt::format("reading, {}", unitSign(point.target.unit))};
      std::vector<std::string> deviating{"", "deviation, %"};
      for (std::size_t at = from; at < from + across; ++at) {
        readings.push_back(at < point.readings.size() ? point.readings[at] : "");
        deviating.push_back(at < deviations.size() ? deviation(deviations[at], 2) : "");
      }
      table.rows.push_back(std::move(readings));
      table.rows.push_back(std::move(deviating));
    }
  }
  return table;
}

TableBlock budgetTable(const CheckResult& recomputed) {
  TableBlock table{.heading = "Uncertainty budget: standard uncertainties, % of the reference value",
                   .columns = {left("source")},
                   .rows = {}};
  for (const auto& point : recomputed.points) table.columns.push_back(right("at " + writeTorque(point.target)));
  const auto& first = recomputed.points.front().budget;
  for (std::size_t i = 0; i < first.size(); ++i) {
    const auto source = first[i].source;
    const bool counted = std::ranges::find(recomputed.notEvaluated, source) == recomputed.notEvaluated.end();
    std::vector<std::string> row{std::string(budgetWords(source)) +
                                 (counted ? "" : " – not evaluated, counted as 0")};
    for (const auto& point : recomputed.points) row.push_back(percent(point.budget[i].standardUncertaintyPercent));
    table.rows.push_back(std::move(row));
  }
  std::vector<std::string> combined{"combined, w (root of the sum of squares)"}, expandedRow{"expanded, W = 2 w"};
  for (const auto& point : recomputed.points) {
    combined.push_back(percent(point.standardUncertaintyPercent));
    expandedRow.push_back(percent(point.expandedUncertaintyPercent));
  }
  table.rows.push_back(std::move(combined));
  table.rows.push_back(std::move(expandedRow));
  return table;
}

TableBlock beforeAndAfterTable(const Check& before, const Check& after) {
  TableBlock table{
      .heading = fmt::format("As found (check {}, {}) beside as left", before.id, writeDate(before.date)),
      .columns = {left("set-point"), right("as found: mean deviation, %"), right("W (k = 2), %"),
                  left("as found: verdict"), right("as left: mean deviation, %"), right("W (k = 2), %"),
                  left("as left: verdict")},
      .rows = {}};
  const auto add = [&](StatedTorque target) {
    std::vector<std::string> row{writeTorque(target)};
    for (const auto* check : {&before, &after}) {
      const auto* point = pointAt(*check, target);
      row.push_back(point ? deviation(point->meanDeviation) : "");
      row.push_back(point ? percent(expanded(*point)) : "");
      row.push_back(point ? std::string(writeVerdict(point->verdict)) : "not checked");
    }
    table.rows.push_back(std::move(row));
  };
  for (const auto& point : before.points) add(point.target);
  for (const auto& point : after.points) {
    if (!pointAt(before, point.target)) add(point.target);
  }
  return table;
}

}  // namespace steadyturn
