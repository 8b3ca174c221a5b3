#include "candidates.h"

#include <algorithm>

namespace steadyturn {

namespace {

std::optional<Refusal> refusalOf(const ToolOverview& overview) {
  switch (overview.standing) {
    case Standing::Retired:
      return Refusal{RefusalKind::Retired, overview.tool.statusReason};
    case Standing::Held:
      return Refusal{RefusalKind::Held, overview.tool.statusReason};
    case Standing::NeverChecked:
      return Refusal{RefusalKind::NoCheck, {}};
    case Standing::Failed:
      return Refusal{RefusalKind::FailedLastCheck, writeDate(*overview.lastCheck)};
    case Standing::Overdue:
      return Refusal{RefusalKind::Overdue, writeDate(*overview.dueDate)};
    case Standing::Leaving:
    case Standing::DueSoon:
    case Standing::Ready:
      return std::nullopt;
  }
  return std::nullopt;
}

SetPointOutlook outlookOf(const DriftSeries& series) {
  const auto& newest = series.points.back();
  Uncertainty pull{.standardPercent = newest.repeatability.value_or(0), .degreesOfFreedom = {}};
  if (newest.repeatability) pull.degreesOfFreedom = newest.readings - 1;
  return {.target = series.target,
          .drift = series.drift,
          .outlook = series.outlook,
          .newestMeanDeviationPercent = newest.meanDeviation,
          .pull = pull,
          .referenceStandardUncertaintyPercent = newest.referenceStandardUncertainty};
}

}  // namespace

Candidate candidateOf(const ToolDrift& drift, const ToolOverview& overview) {
  Candidate candidate{.tool = drift.tool.id,
                      .kind = drift.tool.kind,
                      .minimum = drift.tool.minimumTorque(),
                      .maximum = drift.tool.maximumTorque(),
                      .resolution = drift.tool.resolutionTorque(),
                      .limitPercent = drift.tool.permittedPercent(),
                      .refusal = refusalOf(overview),
                      .outlooks = {}};
  // Common threads are right-handed: the clockwise series speak for a tool that has any.
  const auto isClockwise = [](const DriftSeries& series) { return series.direction == Direction::Clockwise; };
  const bool anyClockwise = std::ranges::any_of(drift.series, isClockwise);
  for (const auto& series : drift.series) {
    if (isClockwise(series) || !anyClockwise) candidate.outlooks.push_back(outlookOf(series));
  }
  return candidate;
}

Demand demandOf(const Fastener& fastener, const std::optional<Adapter>& adapter, double partLimitRisk) {
  const auto stated = [&](const std::optional<double>& value) -> std::optional<StatedTorque> {
    if (!value) return std::nullopt;
    return StatedTorque{*value, fastener.unit};
  };
  return {.target = fastener.targetTorque(),
          .low = stated(fastener.low),
          .high = stated(fastener.high),
          .partLimit = stated(fastener.partLimit),
          .adapter = adapter,
          .partLimitRisk = partLimitRisk};
}

bool inRange(const Tool& tool, const Demand& demand) {
  // Widened by a tenth: the deviation and the graduations shift what a setting delivers.
  constexpr double margin = 1.1;
  const auto window = windowOf(demand);
  const double factor = demand.adapter ? adapterFactor(*demand.adapter) : 1;
  const double low = window.low.torque().newtonMetres() / factor / margin;
  const double high = window.high.torque().newtonMetres() / factor * margin;
  const double reach = tool.maximumTorque().torque().newtonMetres();
  const double least = tool.minimum ? tool.minimumTorque()->torque().newtonMetres() : 0;
  return low <= reach && high >= least;
}

std::string rangeInWords(const Tool& tool) {
  const std::string from = tool.minimum ? writeNumber(*tool.minimum) + " to " : "up to ";
  return from + writeNumber(tool.maximum) + " " + std::string(unitSign(tool.unit));
}

}  // namespace steadyturn
