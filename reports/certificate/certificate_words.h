// What a certificate says in sentences: decision rule, probability, caveats.
#pragma once

#include <string>
#include <string_view>

#include "certificate.h"

namespace steadyturn {

// "as found", "as left".
std::string_view phaseWords(Phase phase);
// "output drive" for "drive"; a source that is not known is given back as it is.
std::string_view budgetWords(std::string_view source);
// What `verdict` claims, of what, against which limit.
std::string conformityWords(const CertificateData& data);
std::string decisionRuleWords(const Check& check);
// "98.7 % (about 987 in 1000)", "more than 99.9 %", "less than 0.1 %".
std::string probabilityWords(double probability);
std::string conformityProbabilityWords(const Check& check);

}  // namespace steadyturn
