// Reviewing the interval of one tool by the methods of ILAC-G24 / OIML D 10:2022 that a workshop can follow [from
// memory]: the guide names methods and prescribes no single rule; the rules filled in here are common practice.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "drift.h"

namespace steadyturn {

struct ReviewedInterval {
  std::string method;               // "staircase", "control chart", "in-use time"
  std::optional<int> intervalDays;  // absent: the method can't tell, `because` says why
  std::string because;
};

// Method 1, staircase: after each check as found the interval goes up a step when the tool was well inside (80 % of
// its permissible deviation or less), down when it was outside, else stays. A step up is a quarter, a step down a
// third, between 30 days and five years (common practice). The record is gone through from `firstIntervalDays`.
ReviewedInterval staircase(const std::vector<DatedDeviation>& checks, double permittedPercent, int firstIntervalDays);

// Method 2, control chart: days from the last check until the prediction interval of the tool's own regression
// reaches the permissible deviation.
ReviewedInterval controlChart(const DriftResult& own, Date lastCheck);

// Method 3, in-use time: days in which the tool does the tightenings allowed between checks.
ReviewedInterval inUseTime(std::optional<double> tighteningsPerDay, double allowed);

}  // namespace steadyturn
