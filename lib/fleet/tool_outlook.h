// Which figures speak for a tool at one set-point today: its own regression, its fleet, or an assumption. Every due
// date, choice and chart asks here.
#pragma once

#include "drift.h"
#include "fleet.h"

namespace steadyturn {

// The most certain first.
enum class OutlookBasis { OwnRecord, Fleet, Assumption };
std::string_view writeOutlookBasis(OutlookBasis basis);  // "own record", "fleet", "assumption"

// From this many degrees of freedom a tool's own record decides: due dates, states and choices are promised by its
// own regression as soon as there is one, however wide its interval; the fleet's figures stand beside it. Below it,
// the fleet where it is on record.
inline constexpr int ownRecordSpeaksFrom = 1;

struct ToolOutlook {
  OutlookBasis basis = OutlookBasis::Assumption;
  double deviationPercent = 0;  // of one more check today
  double standardError = 0;
  std::optional<double> degreesOfFreedom;  // absent: infinite
  Interval interval;
  std::optional<Date> crossingDate;  // first day on which the interval reaches outside ± limit; not for an assumption
  Date dueDate{};                    // the earlier of last check + interval and crossing
  DriftState state = DriftState::Unknown;  // unknown while the tool's own record has no degree of freedom
};

// What the fleet says of one of its tools, whoever decides.
struct FleetWord {
  bool estimated = false;
  std::string group;       // "type II class A"; empty where nobody named it
  std::string assumption;  // in words; empty when estimated
  Exposure exposure = Exposure::Days;
  ExposureScores exposureScores;
  std::size_t tools = 0, toolsThatSpeak = 0;
  SlopeFigure groupSlope;
  FleetVariances variances;
  FleetOutlook outlook;  // today
  double probabilityWithin = 0;
  std::optional<Date> crossingDate;
};

struct OutlookRules {
  Date asOf{};
  double limitPercent = 0;
  double confidence = 0.95;
  int intervalDays = 0;
};

FleetWord fleetWordOf(const Fleet& fleet, std::size_t member, const OutlookRules& rules);

// An assumption takes the newest mean deviation with half the permissible deviation as standard error, or more where
// the tool has gone without a check for longer than the assumption is made for; its due date is the policy's.
// REQUIRES: `own` and `word` are of the same tool, day and limit; `newest` is its newest check.
ToolOutlook decideOutlook(const DriftResult& own, const FleetWord& word, const DatedDeviation& newest,
                          const OutlookRules& rules);

// What a tool probably was before its first check on record, which nobody interpolates: back along the slope of its
// fleet, with the slope's uncertainty and the scatter between two checks.
struct PastOutlook {
  OutlookBasis basis = OutlookBasis::Assumption;  // never its own record: one check has no slope
  double deviationPercent = 0;
  double standardError = 0;
  std::optional<double> degreesOfFreedom;  // absent: infinite
};
// `exposure` before the check, as Fleet::backFrom takes it.
PastOutlook outlookBefore(const Fleet& fleet, double found, double exposure);

// The interval of an assumption, about the newest mean deviation. `prediction` is the (assumed) fleet's on the day.
Interval assumedInterval(const FleetPrediction& prediction, const DatedDeviation& newest, const OutlookRules& rules);

}  // namespace steadyturn
