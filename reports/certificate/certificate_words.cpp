#include "certificate_words.h"

#include <fmt/format.h>

#include <array>
#include <cctype>
#include <utility>

namespace steadyturn {

std::string_view phaseWords(Phase phase) { return phase == Phase::AsFound ? "as found" : "as left"; }

std::string_view budgetWords(std::string_view source) {
  constexpr std::array<std::pair<std::string_view, std::string_view>, 7> words{
      {{"reference", "reference standard"},
       {"resolution", "graduation of the tool"},
       {"reproducibility", "reproducibility (taken off and put back)"},
       {"drive", "position of the output drive"},
       {"interface", "interface between drive and reference"},
       {"loading_point", "loading point on the grip"},
       {"repeatability", "repeatability of the readings"}}};
  for (const auto& [name, spelled] : words) {
    if (name == source) return spelled;
  }
  return source;
}

std::string conformityWords(const CertificateData& data) {
  const auto& check = data.check;
  std::string verdict(writeVerdict(check.verdict));
  for (char& letter : verdict) letter = static_cast<char>(std::toupper(static_cast<unsigned char>(letter)));
  auto words = fmt::format(
      "{}: tool {}, {}, {}, at the set-points listed here, judged against a permissible deviation of ±{} %.", verdict,
      data.tool.id, phaseWords(check.phase), writeDirection(check.direction), writeRounded(check.limitPercent));
  if (data.before) {
    words += fmt::format("\nAs found on {}, before the adjustment (check {}): {}.", writeDate(data.before->date),
                         data.before->id, writeVerdict(data.before->verdict));
  }
  if (check.correctedBy) words += fmt::format("\nNo longer valid: replaced by check {}.", *check.correctedBy);
  return words;
}

std::string decisionRuleWords(const Check& check) {
  const auto limit = writeRounded(check.limitPercent);
  if (check.rule == DecisionRule::Simple) {
    return fmt::format(
        "Simple acceptance (ILAC-G8:09/2019; ISO 6789-1:2017): a set-point passes when every single reading lies "
        "within "
        "±{0} %, and fails otherwise. The measurement uncertainty is stated but not taken off the limit, so a tool "
        "right "
        "at the limit can be passed wrongly with a risk of up to 50 %.",
        limit);
  }
  return fmt::format(
      "Guarded acceptance (ILAC-G8:09/2019, guard band = expanded uncertainty W): pass when the mean deviation lies "
      "within "
      "±({0} % − W); conditional pass when within ±{0} %; conditional fail when within ±({0} % + W); fail beyond. "
      "One single "
      "reading outside ±{0} % makes it conditional fail at best. The risk that a pass is wrong is at most 2.5 %.",
      limit);
}

std::string probabilityWords(double probability) {
  if (probability > 0.999) return "more than 99.9 %";
  if (probability < 0.001) return "less than 0.1 %";
  return fmt::format("{:.1f} % (about {:.0f} in 1000)", probability * 100, probability * 1000);
}

std::string conformityProbabilityWords(const Check& check) {
  std::string words = fmt::format(
      "How sure the statement is: going by the mean deviation and its uncertainty (normal distribution, JCGM "
      "106:2012), the "
      "tool's true mean deviation lies within ±{} % with a probability of ",
      writeRounded(check.limitPercent));
  for (std::size_t i = 0; i < check.points.size(); ++i) {
    const auto& point = check.points[i];
    const bool last = i + 1 == check.points.size();
    words += i == 0 ? "" : last ? " and " : ", ";
    words += fmt::format("{} at {}", probabilityWords(point.conformityProbability), writeTorque(point.target));
  }
  return words + ". A single pull can lie farther out than the mean.";
}

}  // namespace steadyturn
