// The risk of a verdict, said so that a person at the bench can weigh it.
#pragma once

#include <optional>
#include <string>

#include "check.h"

namespace steadyturn {

// "about 1 in 40", "about 3 in 10", "less than 1 in 10,000", "nearly certain". REQUIRES: 0 ≤ probability ≤ 1.
std::string chanceInWords(double probability);

struct PassRisk {
  StatedTorque target;     // the set-point where it is largest
  double probability = 0;  // that the true mean deviation there lies outside the limit: 1 − conformity probability
};
// Of the worst set-point (JCGM 106:2012, 7; specific risk). Nothing for a result without points.
std::optional<PassRisk> passRisk(const CheckResult& result);

// One set-point's risk. A pass: "The chance that this pass is wrong is about 1 in 40: …". A fail: the chance that the
// tool is within its limit after all. `sourcesMissing`: parts of the budget counted as 0, and the sentence says that
// the chance may be larger.
std::string riskInWords(Verdict verdict, StatedTorque target, double conformityProbability, double limitPercent,
                        bool sourcesMissing);
// The whole check's, at its worst set-point. Empty for a result without points.
std::string riskInWords(const CheckResult& result);

}  // namespace steadyturn
