#include "fastener_form.h"

#include "text.h"

namespace steadyturn {
namespace {

std::optional<double> number(const FastenerForm& form, const char* field, Problems& problems) {
  const QString typed = form.text(field);
  if (typed.isEmpty()) return std::nullopt;
  const Result<double> read = parseTorqueNumber(asNumberText(typed), field);
  if (read) return *read;
  problems.insert(problems.end(), read.error().begin(), read.error().end());
  return std::nullopt;
}

Fastener readForm(const FastenerForm& form, Problems& problems) {
  const auto text = [&](const char* field) { return toText(form.text(field)); };
  Fastener made;
  made.id = text("fastener");
  made.assembly = text("assembly");
  made.component = text("component");
  made.thread = text("thread");
  made.propertyClass = text("property_class");
  made.partMaterial = text("part_material");
  made.drive = text("drive");
  made.unit = form.unit;
  made.target = number(form, "target", problems).value_or(0);
  made.low = number(form, "low", problems);
  made.high = number(form, "high", problems);
  made.partLimit = number(form, "part_limit", problems);
  made.seal = text("seal");
  made.renew = form.renew;
  made.lubrication = text("lubrication");
  made.seatCheck = text("seat_check");
  made.source = text("source");
  made.revision = text("revision");
  made.sequence = text("sequence");
  made.limitBasis = text("limit_basis");
  made.enteredBy = text("by");
  if (auto stages = parseStages(text("stages"), "stages")) {
    made.stages = std::move(*stages);
  } else {
    problems.insert(problems.end(), stages.error().begin(), stages.error().end());
  }
  double turned = 0;
  for (const auto& stage : made.stages) turned += stage.angle ? stage.value : 0;
  if (turned > 0) made.angleDeg = turned;
  return made;
}

}  // namespace

QString FastenerForm::text(const std::string& field) const {
  const auto found = texts.find(field);
  return found == texts.end() ? QString() : found->second.trimmed();
}

Result<Fastener> FastenerForm::fastener() const {
  Problems problems;
  if (text("target").isEmpty()) problems.push_back({.field = "target", .found = {}, .accepted = "a torque above 0"});
  Fastener made = readForm(*this, problems);
  if (!problems.empty()) return tl::unexpected(problems);
  return made;
}

std::optional<Fastener> FastenerForm::soFar() const {
  Problems problems;
  Fastener made = readForm(*this, problems);
  return made.target > 0 ? std::optional(std::move(made)) : std::nullopt;
}

FastenerForm formOf(const Fastener& from) {
  FastenerForm form;
  const auto number = [](const std::optional<double>& value) {
    return value ? fromText(writeNumber(*value)) : QString();
  };
  // An angle without stages is shown as the stages that it means, so that it can be typed in one field.
  const auto stages = from.stages.empty() && !from.angleDeg ? TighteningStages{} : from.steps();
  form.texts = {{"fastener", fromText(from.id)},
                {"assembly", fromText(from.assembly)},
                {"component", fromText(from.component)},
                {"thread", fromText(from.thread)},
                {"property_class", fromText(from.propertyClass)},
                {"part_material", fromText(from.partMaterial)},
                {"drive", fromText(from.drive)},
                {"target", number(from.target)},
                {"low", number(from.low)},
                {"high", number(from.high)},
                {"part_limit", number(from.partLimit)},
                {"limit_basis", fromText(from.limitBasis)},
                {"stages", fromText(writeStages(stages))},
                {"sequence", fromText(from.sequence)},
                {"seal", fromText(from.seal)},
                {"lubrication", fromText(from.lubrication)},
                {"seat_check", fromText(from.seatCheck)},
                {"source", fromText(from.source)},
                {"revision", fromText(from.revision)}};
  form.unit = from.unit;
  form.renew = from.renew;
  return form;
}

}  // namespace steadyturn
