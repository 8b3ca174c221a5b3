// `sturn check record|list|show|correct`.
#include <CLI/CLI.hpp>

#include "check_text.h"
#include "display_text.h"
#include "figures.h"
#include "readings_file.h"
#include "records_json.h"
#include "shop_commands.h"
#include "text_table.h"
#include "typed_values.h"

namespace steadyturn {
namespace {

struct TypedCheck {
  std::string tool, reference, phase, date, readings, by, direction, temperature, humidity, note, decimal = "point";
  std::string reason;
  std::int64_t check = 0;
  bool json = false;
};

void addDraftOptions(CLI::App& command, TypedCheck& typed, bool required) {
  const auto add = [&](const char* name, std::string& into, const char* help) {
    return command.add_option(name, into, help)->type_name("");
  };
  add("--tool", typed.tool, "The tool's mark")->required(required);
  add("--reference", typed.reference, "The reference standard's mark")->required(required);
  add("--phase", typed.phase, "as_found or as_left")->required(required);
  add("--date", typed.date, "Day of the check, such as 2026-03-14; else today");
  add("--readings", typed.readings, "CSV file with the columns target,reading,unit; one reading a row")->required();
  add("--by", typed.by, "Who checked");
  add("--direction", typed.direction, "clockwise (unless said otherwise) or counterclockwise");
  add("--temperature", typed.temperature, "Of the surroundings, in degrees Celsius");
  add("--humidity", typed.humidity, "Relative humidity, in %");
  add("--note", typed.note, "Anything worth keeping");
  add("--decimal", typed.decimal, "Decimal mark of the file: point or comma")
      ->check(CLI::IsMember({"point", "comma"}));
  command.add_flag("--json", typed.json, "Print the recorded check as JSON");
}

Result<CheckDraft> draftFrom(const Shop& shop, const TypedCheck& typed, CheckDraft draft) {
  TypedValues values;
  if (!typed.tool.empty()) draft.tool = typed.tool;
  if (!typed.reference.empty()) draft.reference = typed.reference;
  if (!typed.by.empty()) draft.by = typed.by;
  if (!typed.note.empty()) draft.note = typed.note;
  if (!typed.phase.empty()) draft.phase = values.valueOf(parsePhase(typed.phase));
  if (!typed.direction.empty()) draft.direction = values.valueOf(parseDirection(typed.direction));
  if (const auto date = values.optionalDate(typed.date, "date")) draft.date = *date;
  if (draft.date == Date{}) draft.date = shop.today();
  if (const auto value = values.optionalNumber(typed.temperature, "temperature")) draft.temperatureC = value;
  if (const auto value = values.optionalNumber(typed.humidity, "humidity")) draft.humidityPercent = value;
  auto readings = readReadings(typed.readings, typed.decimal == "comma");
  Problems problems = values.problems();
  if (!readings) problems.insert(problems.end(), readings.error().begin(), readings.error().end());
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  draft.unit = readings->unit;
  draft.points = std::move(readings->points);
  return draft;
}

Result<Output> tellCheck(const Result<Check>& check, bool json) {
  if (!check) return tl::unexpected(check.error());
  return Output{.text = json ? writeDocument(checkJson(*check)) : checkText(*check), .cautions = {}};
}

Result<Output> record(Shop& shop, const TypedCheck& typed) {
  const auto draft = draftFrom(shop, typed, {});
  if (!draft) return tl::unexpected(draft.error());
  return tellCheck(shop.recordCheck(*draft), typed.json);
}

// What is not typed again stays as the old check has it; the readings are always given anew.
Result<Output> correct(Shop& shop, const TypedCheck& typed) {
  const auto old = shop.check(typed.check);
  if (!old) return tl::unexpected(old.error());
  const auto draft = draftFrom(shop, typed,
                               {.tool = old->tool,
                                .reference = old->reference,
                                .by = old->by,
                                .date = old->date,
                                .phase = old->phase,
                                .direction = old->direction,
                                .temperatureC = old->temperatureC,
                                .humidityPercent = old->humidityPercent,
                                .note = old->note,
                                .points = {}});
  if (!draft) return tl::unexpected(draft.error());
  return tellCheck(shop.correctCheck(typed.check, *draft, typed.reason), typed.json);
}

Result<Output> listCheck(const Result<std::vector<Check>>& checks, bool json) {
  if (!checks) return tl::unexpected(checks.error());
  OrderedJson all = OrderedJson::array();
  TextTable table({{"check", Side::Right},
                   {"date"},
                   {"tool"},
                   {"phase"},
                   {"verdict"},
                   {"worst mean, %", Side::Right},
                   {"reference"},
                   {"by"},
                   {"corrected by"}});
  for (const Check& check : *checks) {
    all.push_back(checkJson(check));
    double worst = 0;
    for (const CheckPoint& point : check.points) {
      if (std::abs(point.meanDeviation) > std::abs(worst)) worst = point.meanDeviation;
    }
    table.row({std::to_string(check.id), writeDate(check.date), check.tool, std::string(writePhase(check.phase)),
               std::string(writeVerdict(check.verdict)), signedFigure(worst), check.reference, check.by,
               check.correctedBy ? std::to_string(*check.correctedBy) : ""});
  }
  return Output{.text = json ? writeDocument({{"checks", std::move(all)}}) : table.text(), .cautions = {}};
}

}  // namespace

void addCheckCommands(Context& context) {
  CLI::App& group = *context.addGroup("check", "The checks of tools: record, list, show, correct");
  const auto typed = std::make_shared<TypedCheck>();

  CLI::App* recording = context.add(group, "record", "Record a check and get its verdict",
                                    "sturn check record --tool TW-07 --reference REF-1 --phase as_found "
                                    "--date 2026-03-14 --readings readings.csv");
  addDraftOptions(*recording, *typed, true);
  context.runs(recording, [=](Shop& shop) { return record(shop, *typed); });

  const auto limit = std::make_shared<int>(50);
  CLI::App* listing =
      context.add(group, "list", "List the newest checks, or all of one tool", "sturn check list --tool TW-07");
  listing->add_option("--tool", typed->tool, "Only this tool's, oldest first")->type_name("");
  listing->add_option("--limit", *limit, "How many of the newest, without --tool (50)")
      ->type_name("")
      ->check(CLI::Range(1, 1'000'000));
  listing->add_flag("--json", typed->json, R"(Print {"checks": [...]})");
  context.runs(listing, [=](Shop& shop) {
    return listCheck(typed->tool.empty() ? shop.newestChecks(*limit) : shop.checksOf(typed->tool), typed->json);
  });

  CLI::App* show = context.add(group, "show", "Show a check with its readings", "sturn check show 42");
  show->add_option("CHECK", typed->check, "The check's number")->required()->type_name("");
  show->add_flag("--json", typed->json, "Print the check as JSON");
  context.runs(show, [=](Shop& shop) { return tellCheck(shop.check(typed->check), typed->json); });

  CLI::App* correcting = context.add(group, "correct", "Replace a check by a corrected record; both stay on record",
                                     "sturn check correct 42 --reason 'read in lbf.ft' --readings readings.csv");
  correcting->add_option("CHECK", typed->check, "The number of the check to correct")->required()->type_name("");
  correcting->add_option("--reason", typed->reason, "Why, in a few words")->required()->type_name("");
  addDraftOptions(*correcting, *typed, false);
  context.runs(correcting, [=](Shop& shop) { return correct(shop, *typed); });
}

}  // namespace steadyturn
