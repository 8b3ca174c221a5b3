#include "validate.h"

#include <algorithm>
#include <cmath>

namespace steadyturn {

namespace {

constexpr std::size_t longestText = 10'000;
constexpr std::size_t longestId = 200;

bool validUtf8(const std::string& text) {
  std::size_t i = 0;
  while (i < text.size()) {
    const auto lead = static_cast<unsigned char>(text[i]);
    std::size_t more = 0;
    char32_t least = 0;
    char32_t point = lead;
    if (lead >= 0xF0 && lead <= 0xF4) {
      more = 3, least = 0x10000, point = lead & 0x07U;
    } else if (lead >= 0xE0 && lead < 0xF0) {
      more = 2, least = 0x800, point = lead & 0x0FU;
    } else if (lead >= 0xC2 && lead < 0xE0) {
      more = 1, least = 0x80, point = lead & 0x1FU;
    } else if (lead >= 0x80) {
      return false;
    }
    for (std::size_t k = 1; k <= more; ++k) {
      if (i + k >= text.size()) return false;
      const auto next = static_cast<unsigned char>(text[i + k]);
      if ((next & 0xC0U) != 0x80U) return false;
      point = (point << 6U) | (next & 0x3FU);
    }
    if (point < least || point > 0x10FFFF || (point >= 0xD800 && point <= 0xDFFF)) return false;
    i += more + 1;
  }
  return true;
}

bool hasControl(const std::string& text) {
  return std::any_of(text.begin(), text.end(), [](char c) {
    const auto byte = static_cast<unsigned char>(c);
    return (byte < 0x20 && c != '\t' && c != '\n') || byte == 0x7F;
  });
}

// Adds a problem unless the number is finite and `good`.
void checkNumber(Problems& problems, const std::string& field, double value, bool good, const std::string& accepted) {
  if (std::isfinite(value) && good) return;
  problems.push_back({.field = field, .found = writeNumber(value), .accepted = accepted});
}

void checkOptional(Problems& problems, const std::string& field, const std::optional<double>& value, bool good,
                   const std::string& accepted) {
  if (value) checkNumber(problems, field, *value, good, accepted);
}

// The last torque is the target, and all angles together the angle turned on after it.
void checkStages(Problems& problems, const Fastener& fastener) {
  if (fastener.stages.empty()) return;
  double last = 0, turned = 0;
  for (const auto& stage : fastener.stages) (stage.angle ? turned += stage.value : last = stage.value);
  if (last != fastener.target || turned != fastener.angleDeg.value_or(0)) {
    problems.push_back({.field = "stages",
                        .found = writeStages(fastener.stages),
                        .accepted = "stages whose last torque is the target " + writeNumber(fastener.target) +
                                    " and whose angles add up to angle_deg " +
                                    writeNumber(fastener.angleDeg.value_or(0))});
  }
}

}  // namespace

void append(Problems& into, const Problems& more) { into.insert(into.end(), more.begin(), more.end()); }

void checkText(Problems& problems, const std::string& field, const std::string& text) {
  if (text.size() > longestText) {
    problems.push_back(
        {.field = field, .found = std::to_string(text.size()) + " bytes", .accepted = "at most 10000 bytes"});
  } else if (!validUtf8(text)) {
    problems.push_back({.field = field, .found = "bytes that are not UTF-8", .accepted = "text in UTF-8"});
  } else if (hasControl(text)) {
    problems.push_back(
        {.field = field, .found = "a control character", .accepted = "text without control characters"});
  }
}

void checkId(Problems& problems, const std::string& field, const std::string& id) {
  if (id.empty()) {
    problems.push_back({.field = field, .accepted = "a mark that is not empty"});
  } else if (id.size() > longestId) {
    problems.push_back(
        {.field = field, .found = std::to_string(id.size()) + " bytes", .accepted = "at most 200 bytes"});
  } else {
    checkText(problems, field, id);
  }
}

Problems problemsOf(const Tool& tool) {
  Problems problems;
  checkId(problems, "tool", tool.id);
  checkText(problems, "description", tool.description);
  checkText(problems, "maker", tool.maker);
  checkText(problems, "serial", tool.serial);
  checkText(problems, "drive", tool.drive);
  checkNumber(problems, "max", tool.maximum, tool.maximum > 0, "a torque above 0");
  checkOptional(problems, "min", tool.minimum, tool.minimum >= 0.0, "0 or more");
  if (tool.minimum && *tool.minimum >= tool.maximum) {
    problems.push_back({.field = "min",
                        .found = writeNumber(*tool.minimum) + " with max " + writeNumber(tool.maximum),
                        .accepted = "min below max"});
  }
  checkOptional(problems, "resolution", tool.resolution, tool.resolution > 0.0 && tool.resolution < tool.maximum,
                "above 0 and below max");
  if (tool.intervalDays && (*tool.intervalDays < 1 || *tool.intervalDays > 36525)) {
    problems.push_back(
        {.field = "interval_days", .found = std::to_string(*tool.intervalDays), .accepted = "1 to 36525 days"});
  }
  checkOptional(problems, "limit_percent", tool.limitPercent, tool.limitPercent > 0.0 && tool.limitPercent <= 100.0,
                "above 0, at most 100");
  return problems;
}

Problems problemsOf(const Reference& reference) {
  Problems problems;
  checkId(problems, "reference", reference.id);
  checkText(problems, "description", reference.description);
  checkText(problems, "serial", reference.serial);
  checkText(problems, "certificate", reference.certificate);
  const double expanded = reference.expandedUncertaintyPercent;
  checkNumber(problems, "expanded_uncertainty_percent", expanded, expanded > 0 && expanded <= 100,
              "above 0, at most 100");
  checkOptional(problems, "coverage_factor", reference.coverageFactor,
                reference.coverageFactor >= 1.0 && reference.coverageFactor <= 10.0, "1 to 10 (2 is usual)");
  checkOptional(problems, "error_percent", reference.errorPercent,
                reference.errorPercent > -100.0 && reference.errorPercent < 100.0, "between -100 and 100");
  if (reference.calibrated && reference.due && *reference.due < *reference.calibrated) {
    problems.push_back({.field = "due",
                        .found = writeDate(*reference.due) + " with calibrated " + writeDate(*reference.calibrated),
                        .accepted = "a day on or after the calibration"});
  }
  return problems;
}

Problems problemsOf(const Fastener& fastener) {
  Problems problems;
  checkId(problems, "fastener", fastener.id);
  if (fastener.component.empty())
    problems.push_back({.field = "component", .accepted = "what is tightened, in words"});
  for (const auto& [field, text] : {std::pair{"assembly", &fastener.assembly},
                                    {"component", &fastener.component},
                                    {"thread", &fastener.thread},
                                    {"property_class", &fastener.propertyClass},
                                    {"part_material", &fastener.partMaterial},
                                    {"drive", &fastener.drive},
                                    {"seal", &fastener.seal},
                                    {"lubrication", &fastener.lubrication},
                                    {"seat_check", &fastener.seatCheck},
                                    {"source", &fastener.source},
                                    {"revision", &fastener.revision},
                                    {"sequence", &fastener.sequence},
                                    {"limit_basis", &fastener.limitBasis},
                                    {"by", &fastener.enteredBy}}) {
    checkText(problems, field, *text);
  }
  checkNumber(problems, "target", fastener.target, fastener.target > 0, "a torque above 0");
  checkOptional(problems, "low", fastener.low, fastener.low >= 0.0 && fastener.low <= fastener.target,
                "0 up to the target " + writeNumber(fastener.target));
  checkOptional(problems, "high", fastener.high, fastener.high >= fastener.target,
                "the target " + writeNumber(fastener.target) + " or more");
  if (fastener.low && fastener.high && *fastener.low == *fastener.high) {
    problems.push_back({.field = "high", .found = writeNumber(*fastener.high), .accepted = "above low"});
  }
  checkOptional(problems, "part_limit", fastener.partLimit, fastener.partLimit >= fastener.target,
                "the target " + writeNumber(fastener.target) + " or more");
  checkOptional(problems, "angle_deg", fastener.angleDeg, fastener.angleDeg >= 0.0 && fastener.angleDeg <= 1080.0,
                "0 to 1080 degrees");
  checkStages(problems, fastener);
  return problems;
}

std::vector<std::string> warningsOf(const Fastener& fastener) {
  std::vector<std::string> warnings;
  if (fastener.needsPartLimit()) {
    warnings.push_back(
        fastener.id + " (" + fastener.component +
        "): plastic part without a limit. Enter its limit from the part's own data before it is tightened.");
  }
  if (const auto question = unitQuestionOf(fastener)) {
    warnings.push_back(fastener.id + " (" + fastener.component + "): " + writeQuestion(*question, fastener.thread));
  }
  return warnings;
}

std::optional<SensibleTorque> sensibleTorqueFor(const Fastener& fastener) {
  const auto thread = parseThread(fastener.thread, "thread");
  if (!thread) return std::nullopt;
  const auto cls = parsePropertyClass(fastener.propertyClass, "property_class");
  return sensibleTorque({.thread = *thread,
                         .propertyClass = cls ? std::optional(*cls) : std::nullopt,
                         .parent = parentMaterialOf(fastener.partMaterial),
                         .sealed = !fastener.seal.empty(),
                         .thenAngle = fastener.angleDeg.value_or(0) > 0});
}

std::optional<UnitQuestion> unitQuestionOf(const Fastener& fastener) {
  const auto sensible = sensibleTorqueFor(fastener);
  return sensible ? questionOf(fastener.targetTorque(), *sensible) : std::nullopt;
}

Problems problemsOf(const Tightening& tightening) {
  Problems problems;
  checkId(problems, "job", tightening.job);
  checkId(problems, "fastener", tightening.fastener);
  checkId(problems, "tool", tightening.tool);
  checkText(problems, "vehicle", tightening.vehicle);
  checkText(problems, "by", tightening.by);
  const auto setting = parseTorqueNumber(tightening.setting, "setting");
  if (!setting) {
    problems.insert(problems.end(), setting.error().begin(), setting.error().end());
  } else if (*setting == 0) {
    problems.push_back({.field = "setting", .found = tightening.setting, .accepted = "a torque above 0"});
  }
  return problems;
}

}  // namespace steadyturn
