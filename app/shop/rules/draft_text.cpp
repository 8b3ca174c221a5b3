#include "draft_text.h"

#include <nlohmann/json.hpp>

namespace steadyturn {

namespace {

using Json = nlohmann::json;

Json pointOf(const DraftPoint& point) { return {{"target", point.target}, {"readings", point.readings}}; }

Json orNull(const std::optional<double>& value) { return value ? Json(*value) : Json(nullptr); }

std::optional<double> optionalNumber(const Json& value) {
  return value.is_null() ? std::nullopt : std::optional(value.get<double>());
}

template <typename Value>
Value must(const Result<Value>& parsed) {
  if (!parsed) throw Json::other_error::create(501, "a code that no draft has", static_cast<const Json*>(nullptr));
  return *parsed;
}

Unit unitOf(const std::string& code) {
  const auto unit = parseUnit(code);
  if (!unit) throw Json::other_error::create(501, "no unit", static_cast<const Json*>(nullptr));
  return *unit;
}

CheckDraft draftOf(const Json& json) {
  CheckDraft draft{.tool = json.at("tool"),
                   .reference = json.at("reference"),
                   .by = json.at("by"),
                   .date = must(parseDate(json.at("date").get<std::string>(), "date")),
                   .phase = must(parsePhase(json.at("phase").get<std::string>())),
                   .unit = unitOf(json.at("unit")),
                   .direction = must(parseDirection(json.at("direction").get<std::string>())),
                   .temperatureC = optionalNumber(json.at("temperature_c")),
                   .humidityPercent = optionalNumber(json.at("humidity_percent")),
                   .note = json.at("note"),
                   .points = {}};
  for (const auto& point : json.at("points")) {
    draft.points.push_back({.target = point.at("target"), .readings = point.at("readings")});
  }
  return draft;
}

BenchSetupDraft setupDraftOf(const Json& json) {
  BenchSetupDraft draft{.tool = json.at("tool"),
                        .reference = json.at("reference"),
                        .by = json.at("by"),
                        .date = must(parseDate(json.at("date").get<std::string>(), "date")),
                        .unit = unitOf(json.at("unit")),
                        .target = json.at("target"),
                        .readings = {},
                        .typedSpans = {},
                        .basis = json.at("basis"),
                        .note = json.at("note")};
  for (const auto run : allSetupRuns) {
    const auto& typed = json.at("runs").at(rulesFor(run).name);
    draft.readings[static_cast<std::size_t>(run)] = typed.at("readings").get<TypedSeries>();
    draft.typedSpans[static_cast<std::size_t>(run)] = typed.at("span");
  }
  return draft;
}

// A byte that is no UTF-8 must not cost the readings beside it.
std::string asText(const Json& json) { return json.dump(-1, ' ', false, Json::error_handler_t::replace); }

}  // namespace

std::string writeDraft(const CheckDraft& draft) {
  Json points = Json::array();
  for (const auto& point : draft.points) points.push_back(pointOf(point));
  const Json json{{"tool", draft.tool},
                  {"reference", draft.reference},
                  {"by", draft.by},
                  {"date", writeDate(draft.date)},
                  {"phase", writePhase(draft.phase)},
                  {"unit", unitCode(draft.unit)},
                  {"direction", writeDirection(draft.direction)},
                  {"temperature_c", orNull(draft.temperatureC)},
                  {"humidity_percent", orNull(draft.humidityPercent)},
                  {"note", draft.note},
                  {"points", std::move(points)}};
  return asText(json);
}

std::optional<CheckDraft> parseDraft(const std::string& text) {
  try {
    return draftOf(Json::parse(text));
  } catch (const Json::exception&) {
    return std::nullopt;
  }
}

std::string writeSetupDraft(const BenchSetupDraft& draft) {
  Json runs = Json::object();
  for (const auto run : allSetupRuns) {
    runs[std::string(rulesFor(run).name)] = {{"readings", draft.readings[static_cast<std::size_t>(run)]},
                                             {"span", draft.typedSpans[static_cast<std::size_t>(run)]}};
  }
  return asText({{"tool", draft.tool},
                 {"reference", draft.reference},
                 {"by", draft.by},
                 {"date", writeDate(draft.date)},
                 {"unit", unitCode(draft.unit)},
                 {"target", draft.target},
                 {"runs", std::move(runs)},
                 {"basis", draft.basis},
                 {"note", draft.note}});
}

std::optional<BenchSetupDraft> parseSetupDraft(const std::string& text) {
  try {
    return setupDraftOf(Json::parse(text));
  } catch (const Json::exception&) {
    return std::nullopt;
  }
}

}  // namespace steadyturn
