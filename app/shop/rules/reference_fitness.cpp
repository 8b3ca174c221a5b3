#include "reference_fitness.h"

#include <fmt/format.h>

#include "set_points.h"
#include "tolerance.h"

namespace steadyturn {

namespace {

std::optional<ReferenceDoubt> pastDue(const Reference& reference, Date date) {
  if (!reference.due || *reference.due >= date) return std::nullopt;
  return ReferenceDoubt{.kind = ReferenceDoubtKind::PastDue,
                        .text = fmt::format("{} was due on {}: its figures are no longer vouched for.", reference.id,
                                            writeDate(*reference.due))};
}

std::optional<ReferenceDoubt> outOfRange(const Reference& reference, const std::optional<ReferenceRange>& range,
                                         const Tool& tool) {
  if (!range) return std::nullopt;
  const auto setPoints =
      proposeSetPoints(tool.kind, tool.minimumTorque(), tool.maximumTorque(), tool.resolutionTorque());
  const auto low = setPoints.front();
  const auto high = setPoints.back();
  // A mark rounded from another unit (14.75 lbf·ft for 20 N·m) is no gap.
  constexpr double rounding = 1e-3;
  const bool covers =
      range->low <= low.in(range->unit) * (1 + rounding) && range->high >= high.in(range->unit) * (1 - rounding);
  if (covers) return std::nullopt;
  return ReferenceDoubt{.kind = ReferenceDoubtKind::RangeNotCovered,
                        .text = fmt::format("{} is known from {} to {} {}, the tool is checked from {} to {}.",
                                            reference.id, writeNumber(range->low), writeNumber(range->high),
                                            unitSign(range->unit), writeTorque(low), writeTorque(high))};
}

std::optional<ReferenceDoubt> tooUncertain(const Reference& reference, const Tool& tool) {
  const auto uncertainty = reference.uncertainty();
  const double expanded = 2 * uncertainty.expandedPercent / uncertainty.coverageFactor;
  const double quarter = tool.permittedPercent() / 4;
  if (atMost(expanded, quarter)) return std::nullopt;
  return ReferenceDoubt{.kind = ReferenceDoubtKind::TooUncertain,
                        .text = fmt::format("{} has an expanded uncertainty of {} % (k = 2); this tool asks for at "
                                            "most {} %, a quarter of its permissible deviation (ISO 6789-1).",
                                            reference.id, writeRounded(expanded), writeRounded(quarter))};
}

}  // namespace

std::vector<ReferenceDoubt> doubtsOf(const Reference& reference, const std::optional<ReferenceRange>& range,
                                     const Tool& tool, Date date) {
  std::vector<ReferenceDoubt> doubts;
  for (auto& doubt : {pastDue(reference, date), outOfRange(reference, range, tool), tooUncertain(reference, tool)}) {
    if (doubt) doubts.push_back(*doubt);
  }
  return doubts;
}

}  // namespace steadyturn
