// `sturn tool add|list|show|hold|release|retire`.
#include <CLI/CLI.hpp>
#include <array>

#include "column_options.h"
#include "display_text.h"
#include "figures.h"
#include "outlook_json.h"
#include "records_json.h"
#include "shop_commands.h"
#include "text_table.h"
#include "value_json.h"

namespace steadyturn {
namespace {

constexpr std::array columnsTool{
    ColumnOption{"type", "I (indicating) or II (setting), ISO 6789-1", true},
    ColumnOption{"class", "A to E for type I, A to G for type II", true},
    ColumnOption{"min", "Lowest marked value, in the unit"},
    ColumnOption{"max", "Highest value, in the unit", true},
    ColumnOption{"unit", "N.m, cN.m, kgf.m, kgf.cm, lbf.ft, lbf.in, ozf.in", true},
    ColumnOption{"resolution", "One graduation, in the unit"},
    ColumnOption{"description", "What it is"},
    ColumnOption{"maker", "Who made it"},
    ColumnOption{"serial", "Its serial number"},
    ColumnOption{"drive", "Output drive, such as '1/2 in square'"},
    ColumnOption{"interval_days", "Days between checks; else the shop's policy"},
    ColumnOption{"limit_percent", "Permissible deviation, ± %; else by ISO 6789-1"},
};

Result<Output> addTool(Shop& shop, const std::string& id, const ColumnTexts& texts, bool json) {
  TypedValues typed;
  Tool tool{.id = id,
            .description = texts.text("description"),
            .maker = texts.text("maker"),
            .serial = texts.text("serial"),
            .kind = typed.valueOf(parseToolKind(texts.text("type"), texts.text("class"))),
            .unit = typed.unit(texts.text("unit"), "unit"),
            .minimum = typed.optionalNumber(texts.text("min"), "min"),
            .maximum = typed.number(texts.text("max"), "max"),
            .resolution = typed.optionalNumber(texts.text("resolution"), "resolution"),
            .drive = texts.text("drive"),
            .intervalDays = typed.optionalWhole(texts.text("interval_days"), "interval_days"),
            .limitPercent = typed.optionalNumber(texts.text("limit_percent"), "limit_percent"),
            .statusReason = {}};
  if (!typed.problems().empty()) return tl::unexpected(typed.problems());
  if (auto added = shop.addTool(tool); !added) return tl::unexpected(added.error());
  return Output{.text = json ? writeDocument(toolJson(tool)) : "Added the tool " + displayText(id) + '\n',
                .cautions = {}};
}

std::string rangeOf(const Tool& tool) {
  const std::string from = tool.minimum ? writeNumber(*tool.minimum) + " to " : "up to ";
  return from + writeNumber(tool.maximum) + ' ' + std::string(unitCode(tool.unit));
}

std::string kindOfTool(const Tool& tool) {
  return std::string(writeType(tool.kind.type)) + ' ' + std::string(writeClass(tool.kind.cls));
}

OrderedJson listedJson(const ToolOverview& row) {
  OrderedJson json = toolJson(row.tool);
  json["standing"] = writeStanding(row.standing);
  json["last_check"] = dateJson(row.lastCheck);
  json["due_date"] = dateJson(row.dueDate);
  json["state"] = writeState(row.state);
  return json;
}

Result<Output> listTools(Shop& shop, bool json) {
  const auto rows = shop.overview(shop.today());
  if (!rows) return tl::unexpected(rows.error());
  OrderedJson tools = OrderedJson::array();
  TextTable table({{"tool"},
                   {"kind"},
                   {"range"},
                   {"limit, %", Side::Right},
                   {"standing"},
                   {"last check"},
                   {"due"},
                   {"drift"},
                   {"description"}});
  for (const ToolOverview& row : *rows) {
    tools.push_back(listedJson(row));
    table.row({row.tool.id, kindOfTool(row.tool), rangeOf(row.tool), figure(row.limitPercent),
               std::string(writeStanding(row.standing)), dateFigure(row.lastCheck), dateFigure(row.dueDate),
               std::string(writeState(row.state)), row.tool.description});
  }
  return Output{.text = json ? writeDocument({{"tools", std::move(tools)}}) : table.text(), .cautions = {}};
}

Result<Output> showTool(Shop& shop, const std::string& id, bool json) {
  const auto drift = shop.drift(id, shop.today());
  if (!drift) return tl::unexpected(drift.error());
  const auto plan = shop.planCheck(id);
  if (!plan) return tl::unexpected(plan.error());
  const Tool& tool = drift->tool;
  std::string setPoints;
  OrderedJson points = OrderedJson::array();
  for (const StatedTorque& point : plan->setPoints) {
    setPoints += (setPoints.empty() ? "" : ", ") + torqueText(point);
    points.push_back(torqueJson(point));
  }
  if (json) {
    OrderedJson document = toolJson(tool);
    document["due_date"] = dateJson(drift->dueDate);
    document["state"] = writeState(drift->state);
    document["set_points"] = std::move(points);
    document["readings"] = plan->readings;
    return Output{.text = writeDocument(document), .cautions = {}};
  }
  const std::string status = std::string(writeToolStatus(tool.status));
  return Output{.text = factLines(
                    {{"tool", tool.id},
                     {"description", tool.description},
                     {"maker", tool.maker},
                     {"serial", tool.serial},
                     {"type and class", kindOfTool(tool) + ", " + std::string(describe(tool.kind))},
                     {"range", rangeOf(tool)},
                     {"graduation", tool.resolution ? torqueText(*tool.resolutionTorque()) : ""},
                     {"drive", tool.drive},
                     {"permissible deviation",
                      "± " + figure(plan->limitPercent) + " %" +
                          (tool.limitPercent ? " (set for this tool)" : " (ISO 6789-1, by type, class and maximum)")},
                     {"checked at",
                      setPoints + "; " + std::to_string(plan->readings) + " readings each (" + plan->source + ")"},
                     {"status", tool.statusReason.empty() ? status : status + ": " + tool.statusReason},
                     {"drift", std::string(writeState(drift->state))},
                     {"due", dateFigure(drift->dueDate)}}),
                .cautions = {}};
}

using StatusChange = Result<void> (Shop::*)(const std::string&, const std::string&);

void addStatusCommand(Context& context, CLI::App& group, const char* name, const char* purpose, StatusChange change,
                      const char* done) {
  struct Typed {
    std::string id, reason = "no reason given";
  };
  const auto typed = std::make_shared<Typed>();
  CLI::App* command =
      context.add(group, name, purpose, std::string("sturn tool ") + name + " TW-07 --reason 'fell from the bench'");
  command->add_option("TOOL", typed->id, "The tool's mark")->required()->type_name("");
  command->add_option("--reason", typed->reason, "Why, in a few words; it stays on record")->type_name("");
  context.runs(command, [typed, change, done](Shop& shop) -> Result<Output> {
    if (auto changed = (shop.*change)(typed->id, typed->reason); !changed) return tl::unexpected(changed.error());
    return Output{.text = displayText(typed->id) + " is " + done + '\n', .cautions = {}};
  });
}

}  // namespace

void addToolCommands(Context& context) {
  CLI::App& group = *context.addGroup("tool", "The tools: add, list, show, group, hold, release, retire");
  const auto id = std::make_shared<std::string>();
  const auto json = std::make_shared<bool>(false);

  CLI::App* add =
      context.add(group, "add", "Add a tool",
                  "sturn tool add TW-07 --type II --class A --min 20 --max 100 --unit N.m --resolution 1");
  add->add_option("TOOL", *id, "The shop's own mark on the tool")->required()->type_name("");
  const auto texts = addColumnOptions(*add, columnsTool, true);
  add->add_flag("--json", *json, "Print the tool as JSON");
  context.runs(add, [=](Shop& shop) { return addTool(shop, *id, *texts, *json); });

  CLI::App* list = context.add(group, "list", "List the tools and where each stands today", "sturn tool list");
  list->add_flag("--json", *json, R"(Print {"tools": [...]})");
  context.runs(list, [=](Shop& shop) { return listTools(shop, *json); });

  CLI::App* show = context.add(group, "show", "Show a tool and what its check asks for", "sturn tool show TW-07");
  show->add_option("TOOL", *id, "The tool's mark")->required()->type_name("");
  show->add_flag("--json", *json, "Print the tool as JSON");
  context.runs(show, [=](Shop& shop) { return showTool(shop, *id, *json); });

  addGroupCommand(context, group);
  addStatusCommand(context, group, "hold", "Take a tool out of use for now", &Shop::holdTool, "held");
  addStatusCommand(context, group, "release", "Put a held tool back to use", &Shop::releaseTool, "in service");
  addStatusCommand(context, group, "retire", "Take a tool out of use for good", &Shop::retireTool, "retired");
}

}  // namespace steadyturn
