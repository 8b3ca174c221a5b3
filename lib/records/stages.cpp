#include "stages.h"

#include <algorithm>
#include <cctype>

namespace steadyturn {

namespace {

std::string withoutBlanks(std::string_view text) {
  std::string tight;
  std::ranges::copy_if(text, std::back_inserter(tight), [](unsigned char c) { return !std::isspace(c); });
  return tight;
}

bool takeEnding(std::string& text, std::string_view ending) {
  if (!text.ends_with(ending)) return false;
  text.erase(text.size() - ending.size());
  return true;
}

}  // namespace

std::string writeStages(const TighteningStages& stages) {
  std::string text;
  for (const auto& stage : stages) {
    text += (text.empty() ? "" : ";") + writeNumber(stage.value) + (stage.angle ? "deg" : "");
  }
  return text;
}

Result<TighteningStages> parseStages(std::string_view typed, std::string_view field) {
  TighteningStages stages;
  std::string text = withoutBlanks(typed);
  std::ranges::replace(text, '+', ';');
  for (std::size_t from = 0; from < text.size();) {
    const auto end = std::min(text.find(';', from), text.size());
    std::string word = text.substr(from, end - from);
    const bool angle = takeEnding(word, "deg") || takeEnding(word, "°");
    const auto value = parseTorqueNumber(word, field);
    if (!value || *value <= 0 || (stages.empty() && angle)) {
      return refuse({.field = std::string(field),
                     .found = std::string(typed),
                     .accepted = "a torque, then torques or angles, such as '30; 60; 90 deg'"});
    }
    stages.push_back({.value = *value, .angle = angle});
    from = end + 1;
  }
  return stages;
}

std::string stageInWords(const TighteningStage& stage, Unit unit) {
  return stage.angle ? "turn by " + writeRounded(stage.value) + "°" : writeTorque({stage.value, unit});
}

}  // namespace steadyturn
