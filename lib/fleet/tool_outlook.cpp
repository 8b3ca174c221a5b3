#include "tool_outlook.h"

#include <algorithm>
#include <cmath>

#include "fleet_assumption.h"
#include "student_t.h"

namespace steadyturn {

namespace {

constexpr int horizonOfOutlook = 7305;  // 20 years of 365.25 days

Date dueByPolicy(const DatedDeviation& newest, const OutlookRules& rules) {
  return newest.date + std::chrono::days(rules.intervalDays);
}

ToolOutlook ownOutlook(const DriftResult& own) {
  return {.basis = OutlookBasis::OwnRecord,
          .deviationPercent = *own.predictedPercent,
          .standardError = *own.predictionStandardError,
          .degreesOfFreedom = own.degreesOfFreedom,
          .interval = *own.predictionInterval,
          .crossingDate = own.crossingDate,
          .dueDate = own.dueDate,
          .state = own.state};
}

DriftState stateByFleet(const FleetWord& word, bool leaves, double confidence) {
  if (leaves) return DriftState::Leaving;
  const ToolSlope& slope = word.outlook.slope;
  const double t = std::abs(slope.slope) / slope.standardError;
  return 2 * studentUpper(t, word.outlook.prediction.degreesOfFreedom) < 1 - confidence ? DriftState::Drifting
                                                                                        : DriftState::Steady;
}

ToolOutlook fleetOutlook(const DriftResult& own, const FleetWord& word, const DatedDeviation& newest,
                         const OutlookRules& rules) {
  const Date policy = dueByPolicy(newest, rules);
  const bool leaves = word.crossingDate && *word.crossingDate < policy;
  return {
      .basis = OutlookBasis::Fleet,
      .deviationPercent = word.outlook.prediction.mean,
      .standardError = word.outlook.prediction.standardError,
      .degreesOfFreedom = word.outlook.prediction.degreesOfFreedom,
      .interval = word.outlook.interval,
      .crossingDate = word.crossingDate,
      .dueDate = leaves ? *word.crossingDate : policy,
      .state = own.state == DriftState::Unknown ? DriftState::Unknown : stateByFleet(word, leaves, rules.confidence)};
}

double assumedError(const FleetPrediction& prediction, const OutlookRules& rules) {
  return std::max(rules.limitPercent / 2, prediction.standardError);
}

ToolOutlook assumedOutlook(const FleetWord& word, const DatedDeviation& newest, const OutlookRules& rules) {
  return {.basis = OutlookBasis::Assumption,
          .deviationPercent = newest.deviationPercent,
          .standardError = assumedError(word.outlook.prediction, rules),
          .degreesOfFreedom = {},
          .interval = assumedInterval(word.outlook.prediction, newest, rules),
          .crossingDate = {},
          .dueDate = dueByPolicy(newest, rules),
          .state = DriftState::Unknown};
}

}  // namespace

Interval assumedInterval(const FleetPrediction& prediction, const DatedDeviation& newest, const OutlookRules& rules) {
  const double reach = studentQuantile(rules.confidence, {}) * assumedError(prediction, rules);
  return {.low = newest.deviationPercent - reach, .high = newest.deviationPercent + reach};
}

std::string_view writeOutlookBasis(OutlookBasis basis) {
  switch (basis) {
    case OutlookBasis::OwnRecord:
      return "own record";
    case OutlookBasis::Fleet:
      return "fleet";
    case OutlookBasis::Assumption:
      return "assumption";
  }
  return {};
}

PastOutlook outlookBefore(const Fleet& fleet, double found, double exposure) {
  const auto before = fleet.backFrom(found, exposure);
  return {.basis = fleet.isEstimated() ? OutlookBasis::Fleet : OutlookBasis::Assumption,
          .deviationPercent = before.mean,
          .standardError = before.standardError,
          .degreesOfFreedom = before.degreesOfFreedom};
}

FleetWord fleetWordOf(const Fleet& fleet, std::size_t member, const OutlookRules& rules) {
  return {.estimated = fleet.isEstimated(),
          .group = {},
          .assumption = fleet.isEstimated() ? std::string() : assumptionText(fleet.permittedPercent()),
          .exposure = fleet.exposure(),
          .exposureScores = fleet.exposureScores(),
          .tools = fleet.size(),
          .toolsThatSpeak = fleet.toolsThatSpeak(),
          .groupSlope = fleet.model().groupSlopeAdjusted(),
          .variances = fleet.model().variances(),
          .outlook = fleet.outlook(member, rules.asOf),
          .probabilityWithin = fleet.probabilityWithin(member, rules.asOf, rules.limitPercent),
          .crossingDate = fleet.crossing(member, rules.asOf, rules.limitPercent, horizonOfOutlook)};
}

ToolOutlook decideOutlook(const DriftResult& own, const FleetWord& word, const DatedDeviation& newest,
                          const OutlookRules& rules) {
  const bool ownSpeaks = own.predictedPercent && own.predictionInterval;
  if (ownSpeaks && (!word.estimated || own.degreesOfFreedom >= ownRecordSpeaksFrom)) return ownOutlook(own);
  if (word.estimated) return fleetOutlook(own, word, newest, rules);
  return assumedOutlook(word, newest, rules);
}

}  // namespace steadyturn
