#include "part_limit.h"

#include <fmt/format.h>

#include <cmath>

namespace steadyturn {

namespace {

constexpr double strippingToDriving = 2;
constexpr double mostOfStripping = 0.7;

const char* wordOf(TrialKind kind) { return kind == TrialKind::Driving ? "driving" : "stripping"; }

}  // namespace

Result<LimitProposal> proposePartLimit(TrialKind kind, StatedTorque trial, StatedTorque target) {
  if (!(trial.value > 0) || !std::isfinite(trial.value)) {
    return refuse({.field = wordOf(kind), .found = writeNumber(trial.value), .accepted = "a torque above 0"});
  }
  const double factor = kind == TrialKind::Driving ? strippingToDriving * mostOfStripping : mostOfStripping;
  const StatedTorque limit{.value = trial.in(target.unit) * factor, .unit = target.unit};
  if (limit.value < target.value) {
    return refuse(
        {.field = "target",
         .found = writeTorque(target),
         .accepted = fmt::format("at most {}, 70 % of the stripping torque that a {} torque of {} stands for; "
                                 "look up the part's own data",
                                 writeTorque(limit), wordOf(kind), writeTorque(trial))});
  }
  return LimitProposal{
      .limit = limit,
      .basis = fmt::format(
          "proposal: 70 % of {}the stripping torque, {} torque {} by trial (design practice for screws "
          "in plastic)",
          kind == TrialKind::Driving ? "twice the driving torque taken for " : "", wordOf(kind), writeTorque(trial))};
}

}  // namespace steadyturn
