// The history chart in words: its one sentence, and what a point tells.
#pragma once

#include <string>

#include "history_chart.h"

namespace steadyturn {

// "+0.9", "−2.04", "0": rounded to `significant` digits, always with its sign.
std::string signedNumber(double value, int significant);

// "drifts by +0.9 % a year; could leave ±4 % around 2027-03-11", "steady …", "too few checks to tell a drift".
std::string driftSentence(const HistoryData& data);

// What it rests on: how much is borrowed from the fleet, or that it is assumed; beside it what the tool's own
// regression says. Empty where nobody asked the fleet.
std::string basisSentence(const HistoryData& data);

// The first in a few words, for a small chart: "+0.31 % a year, may be outside now".
std::string shortDriftSentence(const HistoryData& data);

// "2024-01-10, as found: +1.1 % ± 0.6 % (k = 2), pass".
std::string pointNote(const PointSummary& point);

}  // namespace steadyturn
