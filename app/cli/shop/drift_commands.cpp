// `sturn drift` and `sturn due`.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "figures.h"
#include "fleet_json.h"
#include "outlook_json.h"
#include "outlook_words.h"
#include "output_file.h"
#include "papers.h"
#include "shop_commands.h"
#include "text_table.h"
#include "typed_values.h"
#include "value_json.h"

namespace steadyturn {
namespace {

struct TypedDrift {
  std::string tool, asOf, within = "0", ics;
  bool json = false;
};

Result<Date> dayOf(const std::string& typed, const Shop& shop) {
  if (typed.empty()) return shop.today();
  return parseDate(typed, "as-of");
}

std::string decidedTable(const ToolDrift& drift) {
  TextTable table({{"target", Side::Right},
                   {"checks", Side::Right},
                   {"expected, %", Side::Right},
                   {"95 % interval, %", Side::Right},
                   {"by"},
                   {"leaves its limits"},
                   {"due"},
                   {"state"}});
  for (const DriftSeries& one : drift.series) {
    const ToolOutlook& outlook = one.outlook;
    table.row({torqueText(one.target), std::to_string(one.points.size()), signedFigure(outlook.deviationPercent),
               intervalFigure(outlook.interval), std::string(writeOutlookBasis(outlook.basis)),
               dateFigure(outlook.crossingDate), writeDate(outlook.dueDate), std::string(writeState(outlook.state))});
  }
  return table.text();
}

std::string ownTable(const ToolDrift& drift) {
  TextTable table({{"target", Side::Right},
                   {"slope, % a year", Side::Right},
                   {"p", Side::Right},
                   {"expected, %", Side::Right},
                   {"95 % interval, %", Side::Right}});
  for (const DriftSeries& one : drift.series) {
    table.row({torqueText(one.target), signedFigure(one.drift.slopePercentPerYear), figure(one.drift.pValue),
               signedFigure(one.drift.predictedPercent), intervalFigure(one.drift.predictionInterval)});
  }
  return table.text();
}

std::string fleetTable(const ToolDrift& drift) {
  TextTable table({{"target", Side::Right},
                   {"slope, %", Side::Right},
                   {"per"},
                   {"borrowed, %", Side::Right},
                   {"expected, %", Side::Right},
                   {"95 % interval, %", Side::Right},
                   {"inside limit, %", Side::Right},
                   {"tools", Side::Right},
                   {"group"}});
  for (const DriftSeries& one : drift.series) {
    const FleetWord& fleet = one.fleet;
    table.row({torqueText(one.target), signedFigure(fleet.outlook.slope.slope), std::string(slopePer(fleet.exposure)),
               figure(100 * fleet.outlook.slope.borrowed), signedFigure(fleet.outlook.prediction.mean),
               intervalFigure(fleet.outlook.interval), figure(100 * fleet.probabilityWithin),
               std::to_string(fleet.toolsThatSpeak), fleet.group});
  }
  return table.text();
}

// What the prediction rests on at each set-point, each assumption once, then what the tables show.
std::string driftNotes(const ToolDrift& drift) {
  std::string text;
  for (const DriftSeries& one : drift.series) {
    text += torqueText(one.target) + ": " + borrowedSentence(one.outlook.basis, one.fleet) + ".\n";
  }
  for (const DriftSeries& one : drift.series) {
    if (!one.fleet.assumption.empty() && text.find(one.fleet.assumption) == std::string::npos) {
      text += one.fleet.assumption + '\n';
    }
  }
  return text +
         "The intervals are for the mean of one more check. The tool's own record counts as soon as it has an "
         "interval;\nbefore, tools like it do (a mixed model: one slope for the group, each tool's own drawn towards "
         "it by the share\n"
         "\"borrowed\"), or an assumption. Due: the earlier of the checking interval and the day on which the "
         "interval\n"
         "reaches the limit.\n";
}

std::string driftText(const ToolDrift& drift, Date asOf) {
  std::string text =
      factLines({{"tool", drift.tool.id + (drift.tool.description.empty() ? "" : ", ") + drift.tool.description},
                 {"as of", writeDate(asOf)},
                 {"limit", "± " + figure(drift.tool.permittedPercent()) + " %"},
                 {"state", std::string(writeState(drift.state))},
                 {"due", dateFigure(drift.dueDate)}});
  if (drift.series.empty()) return text + "No check on record.\n";
  return text + '\n' + decidedTable(drift) + "\nIts own record alone:\n" + ownTable(drift) + "\nTools like it:\n" +
         fleetTable(drift) + '\n' + driftNotes(drift);
}

Result<Output> tellDrift(Shop& shop, const TypedDrift& typed) {
  const auto asOf = dayOf(typed.asOf, shop);
  if (!asOf) return tl::unexpected(asOf.error());
  const auto drift = shop.drift(typed.tool, *asOf);
  if (!drift) return tl::unexpected(drift.error());
  return Output{.text = typed.json ? writeDocument(toolDriftJson(*drift)) : driftText(*drift, *asOf), .cautions = {}};
}

std::string dueText(const std::vector<ToolOverview>& rows, Date until) {
  if (rows.empty()) return "No tool is due by " + writeDate(until) + ".\n";
  TextTable table({{"tool"},
                   {"due"},
                   {"standing"},
                   {"last check"},
                   {"drift"},
                   {"at", Side::Right},
                   {"expected, %", Side::Right},
                   {"95 % interval, %", Side::Right},
                   {"limit, %", Side::Right},
                   {"description"}});
  for (const ToolOverview& row : rows) {
    table.row({row.tool.id, dateFigure(row.dueDate), std::string(writeStanding(row.standing)),
               dateFigure(row.lastCheck), std::string(writeState(row.state)),
               row.worstTarget ? torqueText(*row.worstTarget) : "-", signedFigure(row.predictedPercent),
               intervalFigure(row.predictionInterval), figure(row.limitPercent), row.tool.description});
  }
  return table.text();
}

Result<Output> writeIcs(Shop& shop, Date asOf, int within, const TypedDrift& typed) {
  const auto now = std::chrono::floor<std::chrono::seconds>(std::chrono::system_clock::now());
  const auto data = dueCalendarOf(shop, asOf, within, now);
  if (!data) return tl::unexpected(data.error());
  const std::size_t count = data->work.size();
  const auto calendar = writeCalendar(*data);
  if (!calendar) return tl::unexpected(calendar.error());
  if (auto written = writeOutputFile(typed.ics, *calendar); !written) return tl::unexpected(written.error());
  if (typed.json) return Output{.text = writeDocument({{"file", typed.ics}, {"events", count}}), .cautions = {}};
  return Output{.text = "Wrote " + typed.ics + ", events: " + std::to_string(count) + '\n', .cautions = {}};
}

Result<Output> tellDue(Shop& shop, const TypedDrift& typed) {
  TypedValues values;
  const Date asOf = values.valueOf(dayOf(typed.asOf, shop));
  const auto within = values.optionalWhole(typed.within, "within");
  constexpr int mostDays = 36525;
  if (within && (*within < 0 || *within > mostDays)) {
    values.refuse({.field = "within", .found = typed.within, .accepted = "0 to 36525 days"});
  }
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const Date until = asOf + std::chrono::days(within.value_or(0));
  if (!typed.ics.empty()) return writeIcs(shop, asOf, within.value_or(0), typed);
  const auto rows = shop.due(asOf, until);
  if (!rows) return tl::unexpected(rows.error());
  if (!typed.json) return Output{.text = dueText(*rows, until), .cautions = {}};
  OrderedJson tools = OrderedJson::array();
  for (const ToolOverview& row : *rows) tools.push_back(overviewJson(row));
  return Output{
      .text = writeDocument({{"as_of", writeDate(asOf)}, {"until", writeDate(until)}, {"tools", std::move(tools)}}),
      .cautions = {}};
}

}  // namespace

void addDriftCommands(Context& context) {
  const auto typed = std::make_shared<TypedDrift>();
  const char* asOfHelp = "The day it is asked for, such as 2026-06-01; else today";

  CLI::App* drift = context.add(context.app(), "drift", "Say how a tool drifts and when it is due",
                                "sturn drift TW-07 --as-of 2026-06-01");
  drift->add_option("TOOL", typed->tool, "The tool's mark")->required()->type_name("");
  drift->add_option("--as-of", typed->asOf, asOfHelp)->type_name("");
  drift->add_flag("--json", typed->json, R"(Print {"tool", "series", "due_date", "state"})");
  context.runs(drift, [=](Shop& shop) { return tellDrift(shop, *typed); });

  CLI::App* due =
      context.add(context.app(), "due", "List the tools that are due, earliest first", "sturn due --within 30");
  due->add_option("--as-of", typed->asOf, asOfHelp)->type_name("");
  due->add_option("--within", typed->within, "Days to look ahead (0)")->type_name("");
  due->add_option("--ics", typed->ics, "Write the due days to a calendar file (RFC 5545) instead")->type_name("FILE");
  due->add_flag("--json", typed->json, R"(Print {"as_of", "until", "tools": [...]}; with --ics {"file", "events"})");
  context.runs(due, [=](Shop& shop) { return tellDue(shop, *typed); });
}

}  // namespace steadyturn
