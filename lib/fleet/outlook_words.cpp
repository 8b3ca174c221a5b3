#include "outlook_words.h"

#include <fmt/format.h>

namespace steadyturn {

std::string borrowedSentence(OutlookBasis basis, const FleetWord& word) {
  switch (basis) {
    case OutlookBasis::OwnRecord:
      return "By its own checks alone, nothing borrowed from the fleet";
    case OutlookBasis::Assumption:
      return "Assumed, no record yet: its newest mean deviation, uncertain by half its limit";
    case OutlookBasis::Fleet:
      break;
  }
  const auto borrowed =
      fmt::format("Drift borrowed from the fleet: {:.0f} %, {} {}", 100 * word.outlook.slope.borrowed,
                  word.toolsThatSpeak, word.toolsThatSpeak == 1 ? "tool alike" : "tools alike");
  return word.exposure == Exposure::Days ? borrowed : borrowed + "; wear goes by tightenings, not by days";
}

}  // namespace steadyturn
