#include "fleet.h"

#include <algorithm>

#include "first_day_outside.h"
#include "fleet_assumption.h"
#include "forecast_score.h"
#include "student_t.h"

namespace steadyturn {

namespace {

std::vector<SlopeSums> sumsBy(Exposure exposure, std::span<const FleetMember> members) {
  std::vector<SlopeSums> sums;
  sums.reserve(members.size());
  for (const FleetMember& member : members) sums.push_back(member.sums(exposure));
  return sums;
}

// Every tool whose days tell of a drift has tightenings that do.
bool tighteningsTell(std::span<const FleetMember> members) {
  return std::ranges::all_of(members, [](const FleetMember& member) {
    const bool byDays = member.sums(Exposure::Days).speaksOfSlope();
    return !byDays || (member.counted() && member.sums(Exposure::Tightenings).speaksOfSlope());
  });
}

ForecastScore newestChecks(Exposure exposure, std::span<const FleetMember> members, double permittedPercent) {
  std::vector<SlopeSums> known;
  for (const FleetMember& member : members) {
    const auto& heldOut = member.heldOut(exposure);
    known.push_back(heldOut ? heldOut->before : member.sums(exposure));
  }
  ForecastScore score;
  const FleetModel model = modelOf(known, permittedPercent);
  if (!model.isEstimated()) return score;
  for (std::size_t i = 0; i < members.size(); ++i) {
    const auto& heldOut = members[i].heldOut(exposure);
    if (!heldOut) continue;
    const auto next = model.predict(known[i], heldOut->x);
    score.add({next.mean, next.standardError, next.degreesOfFreedom}, heldOut->y);
  }
  return score;
}

ExposureScores scoresOf(std::span<const FleetMember> members, double permittedPercent) {
  if (!tighteningsTell(members)) return {};
  const auto days = newestChecks(Exposure::Days, members, permittedPercent);
  const auto tightenings = newestChecks(Exposure::Tightenings, members, permittedPercent);
  return {.days = days.meanLogScore(), .tightenings = tightenings.meanLogScore(), .checks = days.forecasts()};
}

Exposure betterOf(const ExposureScores& scores) {
  const bool uses = scores.days && scores.tightenings && *scores.tightenings > *scores.days;
  return uses ? Exposure::Tightenings : Exposure::Days;
}

}  // namespace

FleetModel modelOf(std::span<const SlopeSums> sums, double permittedPercent) {
  int speaking = 0;
  int contrasts = 0;
  for (const SlopeSums& tool : sums) {
    speaking += tool.speaksOfSlope() ? 1 : 0;
    contrasts += tool.contrasts();
  }
  if (speaking >= fewestTools && contrasts - speaking >= fewestSpareDifferences) {
    if (const auto model = FleetModel::estimated(sums)) return *model;
  }
  return FleetModel::assumed(sums, assumptionFor(permittedPercent));
}

Fleet::Fleet(std::span<const FleetMember> members, double permittedPercent, double confidence,
             std::optional<Exposure> exposure)
    : members_(members.begin(), members.end()),
      permittedPercent_(permittedPercent),
      confidence_(confidence),
      scores_(scoresOf(members, permittedPercent)),
      exposure_(exposure.value_or(betterOf(scores_))),
      model_(modelOf(sumsBy(exposure_, members), permittedPercent)) {}

std::size_t Fleet::toolsThatSpeak() const {
  return static_cast<std::size_t>(
      std::ranges::count_if(members_, [this](const auto& one) { return one.sums(exposure_).speaksOfSlope(); }));
}

std::size_t Fleet::checks() const {
  std::size_t checks = 0;
  for (const FleetMember& member : members_) checks += member.sums(exposure_).count;
  return checks;
}

FleetPrediction Fleet::predict(std::size_t member, Date day) const {
  return model_.predict(members_[member].sums(exposure_), members_[member].at(exposure_, day));
}

Interval Fleet::intervalOf(const FleetPrediction& prediction) const {
  const double reach = studentQuantile(confidence_, prediction.degreesOfFreedom) * prediction.standardError;
  return {.low = prediction.mean - reach, .high = prediction.mean + reach};
}

FleetOutlook Fleet::outlook(std::size_t member, Date day) const {
  const auto prediction = predict(member, day);
  return {.prediction = prediction, .interval = intervalOf(prediction), .slope = slopeOf(member)};
}

ToolSlope Fleet::slopeOf(std::size_t member) const { return model_.slopeOf(members_[member].sums(exposure_)); }

std::optional<Date> Fleet::crossing(std::size_t member, Date from, double limitPercent, int horizonDays) const {
  return firstDayOutside(from, limitPercent, horizonDays, [&](Date day) { return intervalOf(predict(member, day)); });
}

FleetPrediction Fleet::backFrom(double found, double exposure) const {
  SlopeSums single;  // one check tells nothing of a slope, so the model is the same with it and without
  single.addFirstOfSegment(0, found);
  return model_.predict(single, -exposure);
}

double Fleet::probabilityWithin(std::size_t member, Date day, double limitPercent) const {
  const auto next = predict(member, day);
  return studentLower((limitPercent - next.mean) / next.standardError, next.degreesOfFreedom) -
         studentLower((-limitPercent - next.mean) / next.standardError, next.degreesOfFreedom);
}

}  // namespace steadyturn
