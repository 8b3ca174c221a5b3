#include "records.h"

#include <algorithm>
#include <cctype>
#include <charconv>

namespace steadyturn {

std::string_view writeToolStatus(ToolStatus status) {
  switch (status) {
    case ToolStatus::InService:
      return "in service";
    case ToolStatus::Held:
      return "held";
    case ToolStatus::Retired:
      return "retired";
  }
  return {};
}

Result<ToolStatus> parseToolStatus(std::string_view typed) {
  for (const auto status : {ToolStatus::InService, ToolStatus::Held, ToolStatus::Retired}) {
    if (typed == writeToolStatus(status)) return status;
  }
  return refuse({.field = "status", .found = std::string(typed), .accepted = "in service, held, retired"});
}

std::string_view writeDirection(Direction direction) {
  return direction == Direction::Clockwise ? "clockwise" : "counterclockwise";
}

Result<Direction> parseDirection(std::string_view typed) {
  if (typed == "clockwise") return Direction::Clockwise;
  if (typed == "counterclockwise") return Direction::Counterclockwise;
  return refuse({.field = "direction", .found = std::string(typed), .accepted = "clockwise, counterclockwise"});
}

std::optional<StatedTorque> Tool::minimumTorque() const {
  if (!minimum) return std::nullopt;
  return StatedTorque{*minimum, unit};
}

std::optional<StatedTorque> Tool::resolutionTorque() const {
  if (!resolution) return std::nullopt;
  return StatedTorque{*resolution, unit};
}

double Tool::permittedPercent() const {
  return limitPercent.value_or(permissibleDeviationPercent(kind, maximumTorque()));
}

ReferenceUncertainty Reference::uncertainty() const {
  return {.expandedPercent = expandedUncertaintyPercent,
          .coverageFactor = coverageFactor.value_or(2),
          .errorPercent = errorPercent.value_or(0)};
}

bool Fastener::plastic() const {
  constexpr std::string_view word = "plastic";
  const auto same = [](char typed, char wanted) { return std::tolower(static_cast<unsigned char>(typed)) == wanted; };
  return std::search(partMaterial.begin(), partMaterial.end(), word.begin(), word.end(), same) != partMaterial.end();
}

bool Fastener::needsPartLimit() const { return plastic() && !partLimit; }

TighteningStages Fastener::steps() const {
  if (!stages.empty()) return stages;
  TighteningStages derived{{.value = target, .angle = false}};
  if (angleDeg && *angleDeg > 0) derived.push_back({.value = *angleDeg, .angle = true});
  return derived;
}

StatedTorque Tightening::settingTorque() const {
  double value = 0;
  std::from_chars(setting.data(), setting.data() + setting.size(), value);
  return {value, unit};
}

}  // namespace steadyturn
