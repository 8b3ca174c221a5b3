#include "choose.h"

#include <fmt/format.h>

#include <algorithm>
#include <tuple>

#include "graduations.h"
#include "pull_deviation.h"
#include "set_point_bracket.h"

namespace steadyturn {

namespace {

constexpr double undeclaredTolerance = 0.10;  // of the target, where a fastener states no window
constexpr double lowestSensibleShare = 0.20;  // of the maximum, where no minimum is marked (common practice)
constexpr double assumedGraduation = 0.01;    // of the maximum, where none is stated

StatedTorque share(StatedTorque torque, double factor) {
  return cleanDecimal({.value = torque.value * factor, .unit = torque.unit});
}

// What is known of the mean deviation at one set-point today.
struct Outlook {
  double deviationPercent = 0;
  Uncertainty uncertainty;
  OutlookBasis basis = OutlookBasis::OwnRecord;
};

Outlook outlookAt(const SetPointOutlook& point, double limitPercent) {
  if (point.outlook) {
    return {.deviationPercent = point.outlook->deviationPercent,
            .uncertainty = {.standardPercent = point.outlook->standardError,
                            .degreesOfFreedom = point.outlook->degreesOfFreedom},
            .basis = point.outlook->basis};
  }
  const DriftResult& drift = point.drift;
  if (drift.predictedPercent && drift.predictionStandardError) {
    return {.deviationPercent = *drift.predictedPercent,
            .uncertainty = {.standardPercent = *drift.predictionStandardError,
                            .degreesOfFreedom = drift.degreesOfFreedom},
            .basis = OutlookBasis::OwnRecord};
  }
  return {.deviationPercent = point.newestMeanDeviationPercent,
          .uncertainty = {.standardPercent = limitPercent / 2, .degreesOfFreedom = {}},
          .basis = OutlookBasis::Assumption};
}

std::optional<StatedTorque> graduationOf(const Candidate& candidate) {
  if (candidate.resolution || rulesFor(candidate.kind).fixedValue) return candidate.resolution;
  return share(candidate.maximum, assumedGraduation);
}

SettingRange rangeOf(const Candidate& candidate) {
  return {.low = candidate.minimum.value_or(share(candidate.maximum, lowestSensibleShare)),
          .high = candidate.maximum};
}

bool expectedInside(const DeliveryInput& input) {
  if (!(input.deviationPercent > -100)) return false;
  const StatedTorque expected = deliver(input).expected;
  return expected.in(input.window.low.unit) >= input.window.low.value &&
         expected.in(input.window.high.unit) <= input.window.high.value;
}

std::string rangeText(const Candidate& candidate) {
  if (rulesFor(candidate.kind).fixedValue) return fmt::format("fixed at {}", writeTorque(candidate.maximum));
  const SettingRange range = rangeOf(candidate);
  return fmt::format("{} to {}", writeTorque(*range.low), writeTorque(*range.high));
}

// Drifts in the order in which a person should hear of them.
int concern(DriftState state) {
  switch (state) {
    case DriftState::Steady:
      return 0;
    case DriftState::Drifting:
      return 1;
    case DriftState::Unknown:
      return 2;
    case DriftState::Leaving:
      return 3;
  }
  return 0;
}

Option optionFor(const Candidate& candidate, const BestSetting& best) {
  const auto around = bracket(candidate.outlooks, best.setting);
  const DriftState lower = around.lower.drift.state;
  const DriftState upper = around.upper.drift.state;
  return {.tool = candidate.tool,
          .setting = best.setting,
          .delivery = best.result,
          .driftState = concern(lower) >= concern(upper) ? lower : upper,
          .basis = std::max(outlookAt(around.lower, candidate.limitPercent).basis,
                            outlookAt(around.upper, candidate.limitPercent).basis)};
}

using Offer = tl::expected<Option, Refusal>;

tl::unexpected<Refusal> refused(RefusalKind kind, std::string detail) {
  return tl::unexpected(Refusal{.kind = kind, .detail = std::move(detail)});
}

Offer offerFixed(const Demand& demand, const Candidate& candidate) {
  const DeliveryInput input = deliveryAt(candidate, demand, candidate.maximum);
  if (!expectedInside(input)) return refused(RefusalKind::OutOfRange, rangeText(candidate));
  const BestSetting only{.setting = candidate.maximum, .result = deliver(input)};
  if (only.result.probabilityOverPartLimit.value_or(0) > demand.partLimitRisk) {
    return refused(RefusalKind::PartLimitRisk, writeTorque(*demand.partLimit));
  }
  return optionFor(candidate, only);
}

Offer offerAdjustable(const Demand& demand, const Candidate& candidate) {
  const auto at = [&](StatedTorque setting) { return deliveryAt(candidate, demand, setting); };
  const StatedTorque graduation = *graduationOf(candidate);
  const Graduations graduations(graduation, rangeOf(candidate));
  const double low = windowOf(demand).low.torque().newtonMetres();
  const auto reach =
      graduations.firstWhere([&](StatedTorque s) { return expectedNewtonMetres(at(s)) >= low * (1 - 1e-9); });
  // The window's edge and the expected torque may differ by a rounding, so the next graduation is asked as well.
  const auto lands = [&](std::int64_t k) { return k <= graduations.last() && expectedInside(at(graduations.at(k))); };
  if (!lands(reach) && !lands(reach + 1)) return refused(RefusalKind::OutOfRange, rangeText(candidate));

  const auto best = findBestSetting(at, graduation, rangeOf(candidate), demand.partLimitRisk);
  // A setting that keeps the part safe only by missing the window is no way to do the job.
  if (!best || (demand.partLimit && !expectedInside(at(best->setting)))) {
    return refused(RefusalKind::PartLimitRisk, writeTorque(*demand.partLimit));
  }
  return optionFor(candidate, *best);
}

Offer offer(const Demand& demand, const Candidate& candidate) {
  if (candidate.refusal) return tl::unexpected(*candidate.refusal);
  if (candidate.outlooks.empty()) return refused(RefusalKind::NoCheck, "");
  const KindRules& rules = rulesFor(candidate.kind);
  if (rules.fixedValue) return offerFixed(demand, candidate);
  if (!rules.graduated) return refused(RefusalKind::NotSettable, "");
  return offerAdjustable(demand, candidate);
}

bool preferred(const Option& a, const Option& b) {
  const auto rank = [](const Option& option) {
    return std::tuple(-option.delivery.probabilityWithin, option.delivery.probabilityOverPartLimit.value_or(0));
  };
  return std::tuple_cat(rank(a), std::tie(a.tool)) < std::tuple_cat(rank(b), std::tie(b.tool));
}

}  // namespace

Window windowOf(const Demand& demand) {
  if (demand.low && demand.high) return {.low = *demand.low, .high = *demand.high};
  return {.low = share(demand.target, 1 - undeclaredTolerance),
          .high = share(demand.target, 1 + undeclaredTolerance)};
}

DeliveryInput deliveryAt(const Candidate& candidate, const Demand& demand, StatedTorque setting) {
  const auto around = bracket(candidate.outlooks, setting);
  const Outlook lower = outlookAt(around.lower, candidate.limitPercent);
  const Outlook upper = outlookAt(around.upper, candidate.limitPercent);
  return {.setting = setting,
          .window = windowOf(demand),
          .partLimit = demand.partLimit,
          .adapter = demand.adapter,
          .deviationPercent = around.between(lower.deviationPercent, upper.deviationPercent),
          .deviation = {.standardPercent =
                            around.between(lower.uncertainty.standardPercent, upper.uncertainty.standardPercent),
                        .degreesOfFreedom =
                            fewer(lower.uncertainty.degreesOfFreedom, upper.uncertainty.degreesOfFreedom)},
          .pull = around.nearest().pull,
          .resolution = graduationOf(candidate),
          .referenceStandardUncertaintyPercent = around.nearest().referenceStandardUncertaintyPercent};
}

Choice choose(const Demand& demand, const std::vector<Candidate>& candidates) {
  Choice choice;
  for (const Candidate& candidate : candidates) {
    if (Offer made = offer(demand, candidate)) {
      choice.options.push_back(*std::move(made));
    } else {
      choice.refused.push_back({.tool = candidate.tool, .refusal = std::move(made).error()});
    }
  }
  std::sort(choice.options.begin(), choice.options.end(), preferred);
  return choice;
}

}  // namespace steadyturn
