#include "drift_drawing.h"

#include <fmt/format.h>

#include <algorithm>

#include "torque.h"

namespace steadyturn {
namespace {

// The band's edges are hyperbolas; this many straight pieces can't be told from the curve on any paper.
constexpr int bandPieces = 48;

std::vector<DatedDeviation> deviationsOf(const HistoryData& data) {
  std::vector<DatedDeviation> deviations;
  deviations.reserve(data.points.size());
  for (const auto& point : data.points) deviations.push_back({point.date, point.phase, point.meanDeviation});
  return deviations;
}

std::vector<Date> steps(Date from, Date to) {
  using Count = std::chrono::days::rep;
  const Count span = (to - from).count();
  const auto pieces = std::min<Count>(bandPieces, span);
  std::vector<Date> dates;
  for (Count i = 0; i <= pieces; ++i) {
    dates.push_back(from + std::chrono::days{pieces == 0 ? 0 : span * i / pieces});
  }
  return dates;
}

// The path up to `until`, from the newest check on.
void addForecast(DriftDrawing& drawing, const HistoryData& data, Date until) {
  if (!isBorrowed(data)) return;
  const bool byFleet = data.forecast->outlook.basis == OutlookBasis::Fleet;
  const auto share = writeRounded(data.confidence * 100);
  LineSeries line{.name = byFleet ? "expected by the fleet" : "newest deviation, assumed to stay",
                  .role = Role::Fit,
                  .stroke = byFleet ? Stroke::Dashed : Stroke::Dotted,
                  .points = {}};
  Band band{.name = fmt::format("{} % prediction {}", share, byFleet ? "by the fleet" : "assumed"),
            .role = Role::Prediction,
            .edges = {},
            .outline = line.stroke};
  for (const auto& step : data.forecast->path) {
    if (step.date > until) break;
    line.points.push_back({.date = step.date, .value = step.deviationPercent, .uncertainty = {}, .note = {}});
    band.edges.push_back({step.date, step.interval.low, step.interval.high});
  }
  if (line.points.size() < 2) return;
  drawing.lines.push_back(std::move(line));
  drawing.bands.push_back(std::move(band));
}

}  // namespace

DriftDrawing drawDrift(const HistoryData& data, Date until) {
  DriftDrawing drawing;
  if (data.points.empty()) return drawing;
  const auto deviations = deviationsOf(data);
  const DriftFit fit(deviations, data.confidence);
  const auto bandName = fmt::format("{} % prediction", writeRounded(data.confidence * 100));
  for (std::size_t segment = 0; segment < fit.segments().size(); ++segment) {
    const bool newest = segment + 1 == fit.segments().size();
    const Date from = fit.segments()[segment].first;
    const Date to = newest ? std::max(until, fit.segments()[segment].last) : fit.segments()[segment].last;
    if (from == to) continue;
    LineSeries line{.name = isBorrowed(data) ? "its own fitted drift" : "fitted drift",
                    .role = Role::Fit,
                    .stroke = Stroke::Solid,
                    .points = {}};
    Band band{.name = bandName, .role = Role::Prediction, .edges = {}};
    for (const Date date : steps(from, to)) {
      const auto prediction = fit.predict(date, segment);
      if (!prediction) break;
      // Straight by the calendar; bent where a chart goes by uses.
      line.points.push_back(
          {.date = date, .value = prediction->deviationPercent, .uncertainty = std::nullopt, .note = {}});
      if (prediction->interval) band.edges.push_back({date, prediction->interval->low, prediction->interval->high});
    }
    if (line.points.size() > 1) drawing.lines.push_back(std::move(line));
    if (band.edges.size() > 1) drawing.bands.push_back(std::move(band));
  }
  addForecast(drawing, data, until);
  return drawing;
}

}  // namespace steadyturn
