// `sturn job tighten|show`.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "records_json.h"
#include "shop_commands.h"
#include "text_table.h"
#include "typed_values.h"

namespace steadyturn {
namespace {

struct Typed {
  std::string job, vehicle, date, fastener, tool, setting, unit, seatChecked, by;
  bool json = false;
};

Result<Output> tighten(Shop& shop, const Typed& typed) {
  TypedValues values;
  const Tightening tightening{.job = typed.job,
                              .vehicle = typed.vehicle,
                              .date = values.optionalDate(typed.date, "date").value_or(shop.today()),
                              .fastener = typed.fastener,
                              .tool = typed.tool,
                              .setting = typed.setting,
                              .unit = values.unit(typed.unit, "unit"),
                              .seatChecked = values.flag(typed.seatChecked, "seat-checked"),
                              .by = typed.by};
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const auto recorded = shop.recordTightening(tightening);
  if (!recorded) return tl::unexpected(recorded.error());
  if (typed.json) return Output{.text = writeDocument(tighteningJson(*recorded)), .cautions = {}};
  return Output{.text = "Recorded " + displayText(recorded->fastener) + " with " + displayText(recorded->tool) +
                        " at " + torqueText(recorded->settingTorque()) + " on " + writeDate(recorded->date) + '\n',
                .cautions = {}};
}

Result<Output> show(Shop& shop, const Typed& typed) {
  const auto tightenings = shop.tighteningsOfJob(typed.job);
  if (!tightenings) return tl::unexpected(tightenings.error());
  if (tightenings->empty()) {
    return refuse({.kind = ProblemKind::NotFound,
                   .field = "job",
                   .found = typed.job,
                   .accepted = "a job with at least one tightening on record"});
  }
  OrderedJson all = OrderedJson::array();
  TextTable table(
      {{"date"}, {"vehicle"}, {"fastener"}, {"tool"}, {"setting", Side::Right}, {"seat checked"}, {"by"}});
  for (const Tightening& one : *tightenings) {
    all.push_back(tighteningJson(one));
    const std::string seat = !one.seatChecked ? "-" : *one.seatChecked ? "yes" : "no";
    table.row(
        {writeDate(one.date), one.vehicle, one.fastener, one.tool, torqueText(one.settingTorque()), seat, one.by});
  }
  if (typed.json) {
    return Output{.text = writeDocument({{"job", typed.job}, {"tightenings", std::move(all)}}), .cautions = {}};
  }
  return Output{.text = table.text(), .cautions = {}};
}

}  // namespace

void addJobCommands(Context& context) {
  CLI::App& group = *context.addGroup("job", "The jobs on vehicles: tighten, show");
  group.footer("The shop: --shop FILE, or STURN_SHOP in the environment.\nExample: sturn job show J-1001");
  const auto typed = std::make_shared<Typed>();

  CLI::App* tightening = context.add(group, "tighten", "Record a tightening of a job",
                                     "sturn job tighten J-1001 --vehicle B12 --fastener B12-drain --tool TW-07 "
                                     "--setting 25 --unit N.m --seat-checked yes");
  const auto option = [&](const char* name, std::string& into, const char* help) {
    return tightening->add_option(name, into, help)->type_name("");
  };
  option("JOB", typed->job, "The job's mark")->required();
  option("--fastener", typed->fastener, "The fastener's mark")->required();
  option("--tool", typed->tool, "The tool's mark")->required();
  option("--setting", typed->setting, "What the tool was set to, in the unit")->required();
  option("--unit", typed->unit, "N.m, cN.m, kgf.m, kgf.cm, lbf.ft, lbf.in, ozf.in")->required();
  option("--vehicle", typed->vehicle, "The vehicle's mark");
  option("--date", typed->date, "Day of the tightening, such as 2026-03-14; else today");
  option("--seat-checked", typed->seatChecked, "yes or no: was the seating looked at");
  option("--by", typed->by, "Who tightened");
  tightening->add_flag("--json", typed->json, "Print the tightening as JSON");
  context.runs(tightening, [=](Shop& shop) { return tighten(shop, *typed); });

  CLI::App* showing = context.add(group, "show", "Show the tightenings of a job", "sturn job show J-1001");
  showing->add_option("JOB", typed->job, "The job's mark")->required()->type_name("");
  showing->add_flag("--json", typed->json, R"(Print {"job", "tightenings": [...]})");
  context.runs(showing, [=](Shop& shop) { return show(shop, *typed); });
}

}  // namespace steadyturn
