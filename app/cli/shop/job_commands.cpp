// `sturn job open|tighten|show|close|list`.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "figures.h"
#include "records_json.h"
#include "shop_commands.h"
#include "text_table.h"
#include "typed_values.h"

namespace steadyturn {
namespace {

struct TypedJob {
  std::string job, vehicle, date, fastener, tool, setting, unit, seatChecked, sealRenewed, stages, by, service,
      reason;
  std::vector<std::string> fasteners;
  bool json = false;
};

std::string yesNo(std::optional<bool> flag) { return !flag ? "-" : *flag ? "yes" : "no"; }

std::string stagesText(const JobLine& line, const Tightening& done) {
  const auto steps = line.spec.steps().size();
  if (steps == 1 && !done.stagesDone) return "-";
  return (done.stagesDone ? std::to_string(*done.stagesDone) : "-") + " of " + std::to_string(steps);
}

std::string joinedJob(const std::vector<std::string>& texts) {
  std::string all;
  for (const std::string& text : texts) all += (all.empty() ? "" : ", ") + text;
  return all;
}

std::string headOf(const JobSheet& sheet) {
  const auto& [job, lines] = sheet;
  std::vector<std::pair<std::string, std::string>> facts{{"job", job.id}, {"vehicle", job.vehicle}};
  if (job.opened) {
    facts.emplace_back("service", job.opened->service);
    facts.emplace_back("opened",
                       writeDate(job.opened->date) + (job.opened->by.empty() ? "" : " by " + job.opened->by));
  }
  if (job.closed) {
    facts.emplace_back("closed",
                       writeDate(job.closed->date) + (job.closed->by.empty() ? "" : " by " + job.closed->by));
    facts.emplace_back("as it is, because", job.closed->note);
  }
  return factLines(facts);
}

std::string sheetText(const JobSheet& sheet) {
  TextTable table({{"fastener"},
                   {"what"},
                   {"date"},
                   {"tool"},
                   {"setting", Side::Right},
                   {"stages"},
                   {"seat seen"},
                   {"seal renewed"},
                   {"by"},
                   {"still lacks"}});
  for (const JobLine& line : sheet.lines) {
    if (line.tightenings.empty()) {
      table.row({line.spec.id, line.spec.component, "-", "-", "-", "-", "-", "-", "-", joinedJob(missingOf(line))});
    }
    for (const Tightening& one : line.tightenings) {
      const bool newest = &one == &line.tightenings.back();
      table.row({line.spec.id, line.spec.component, writeDate(one.date), one.tool, torqueText(one.settingTorque()),
                 stagesText(line, one), yesNo(one.seatChecked), yesNo(one.sealRenewed), one.by,
                 newest ? joinedJob(missingOf(line)) : ""});
    }
  }
  return headOf(sheet) + '\n' + table.text();
}

Result<Output> tellJob(const Result<JobSheet>& sheet, bool json) {
  if (!sheet) return tl::unexpected(sheet.error());
  return Output{.text = json ? writeDocument(jobSheetJson(*sheet)) : sheetText(*sheet), .cautions = {}};
}

Result<Output> open(Shop& shop, const TypedJob& typed) {
  TypedValues values;
  const JobDraft draft{.job = typed.job,
                       .vehicle = typed.vehicle,
                       .service = typed.service,
                       .fasteners = typed.fasteners,
                       .date = values.optionalDate(typed.date, "date").value_or(shop.today()),
                       .by = typed.by};
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  return tellJob(shop.openJob(draft), typed.json);
}

Result<Output> closeJob(Shop& shop, const TypedJob& typed) {
  TypedValues values;
  const Date date = values.optionalDate(typed.date, "date").value_or(shop.today());
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  return tellJob(shop.closeJob(typed.job, date, typed.by, typed.reason), typed.json);
}

Result<Output> tighten(Shop& shop, const TypedJob& typed) {
  TypedValues values;
  const Tightening tightening{.job = typed.job,
                              .vehicle = typed.vehicle,
                              .date = values.optionalDate(typed.date, "date").value_or(shop.today()),
                              .fastener = typed.fastener,
                              .tool = typed.tool,
                              .setting = typed.setting,
                              .unit = values.unit(typed.unit, "unit"),
                              .seatChecked = values.flag(typed.seatChecked, "seat-checked"),
                              .by = typed.by,
                              .stagesDone = values.optionalWhole(typed.stages, "stages-done"),
                              .sealRenewed = values.flag(typed.sealRenewed, "seal-renewed")};
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const auto recorded = shop.recordTightening(tightening);
  if (!recorded) return tl::unexpected(recorded.error());
  if (typed.json) return Output{.text = writeDocument(tighteningJson(*recorded)), .cautions = {}};
  return Output{.text = "Recorded " + displayText(recorded->fastener) + " with " + displayText(recorded->tool) +
                        " at " + torqueText(recorded->settingTorque()) + " on " + writeDate(recorded->date) + '\n',
                .cautions = {}};
}

Result<Output> listJob(Shop& shop, bool json) {
  const auto jobs = shop.openJobs();
  if (!jobs) return tl::unexpected(jobs.error());
  OrderedJson all = OrderedJson::array();
  TextTable table({{"job"}, {"vehicle"}, {"service"}, {"opened"}, {"by"}});
  for (const JobRecord& job : *jobs) {
    all.push_back({{"job", job.id},
                   {"vehicle", job.vehicle},
                   {"service", job.opened->service},
                   {"opened", writeDate(job.opened->date)}});
    table.row({job.id, job.vehicle, job.opened->service, writeDate(job.opened->date), job.opened->by});
  }
  if (json) return Output{.text = writeDocument({{"jobs", std::move(all)}}), .cautions = {}};
  return Output{.text = table.empty() ? "No job is open.\n" : table.text(), .cautions = {}};
}

void addTighten(Context& context, CLI::App& group, const std::shared_ptr<TypedJob>& typed) {
  CLI::App* command =
      context.add(group, "tighten", "Record a tightening of a job",
                  "sturn job tighten J-1001 --fastener B12-drain --tool TW-07 --setting 25 --unit N.m "
                  "--seat-checked yes --seal-renewed yes");
  const auto option = [&](const char* name, std::string& into, const char* help) {
    return command->add_option(name, into, help)->type_name("");
  };
  option("JOB", typed->job, "The job's mark")->required();
  option("--fastener", typed->fastener, "The fastener's mark")->required();
  option("--tool", typed->tool, "The tool's mark")->required();
  option("--setting", typed->setting, "What the tool was set to, in the unit")->required();
  option("--unit", typed->unit, "N.m, cN.m, kgf.m, kgf.cm, lbf.ft, lbf.in, ozf.in")->required();
  option("--vehicle", typed->vehicle, "The vehicle's mark; an opened job knows it");
  option("--date", typed->date, "Day of the tightening, such as 2026-03-14; else today");
  option("--seat-checked", typed->seatChecked, "yes or no: was the seating looked at");
  option("--seal-renewed", typed->sealRenewed, "yes or no: was the seal renewed");
  option("--stages-done", typed->stages, "How many of the fastener's stages were done");
  option("--by", typed->by, "Who tightened");
  command->add_flag("--json", typed->json, "Print the tightening as JSON");
  context.runs(command, [=](Shop& shop) { return tighten(shop, *typed); });
}

}  // namespace

void addJobCommands(Context& context) {
  CLI::App& group = *context.addGroup("job", "The jobs on vehicles: open, tighten, show, close, list");
  group.footer("The shop: --shop SHOP, or STURN_SHOP in the environment.\nExample: sturn job show J-1001");
  const auto typed = std::make_shared<TypedJob>();
  const char* sheetHelp = R"(Print {"job", "vehicle", "service", "opened", "closed", "lines", "tightenings"})";

  CLI::App* opening = context.add(group, "open", "Open the sheet of a job on a vehicle",
                                  "sturn job open J-1001 --vehicle B12 --service 'oil and filter, type B van'");
  opening->add_option("JOB", typed->job, "The job's mark")->required()->type_name("");
  opening->add_option("--vehicle", typed->vehicle, "The vehicle's mark")->required()->type_name("");
  opening->add_option("--service", typed->service, "The list to work down")->type_name("");
  opening->add_option("--fastener", typed->fasteners, "A fastener besides; as often as wanted")->type_name("");
  opening->add_option("--date", typed->date, "Day, such as 2026-03-14; else today")->type_name("");
  opening->add_option("--by", typed->by, "Who opens it")->type_name("");
  opening->add_flag("--json", typed->json, sheetHelp);
  context.runs(opening, [=](Shop& shop) { return open(shop, *typed); });

  addTighten(context, group, typed);

  CLI::App* showing = context.add(group, "show", "Show the sheet of a job", "sturn job show J-1001");
  showing->add_option("JOB", typed->job, "The job's mark")->required()->type_name("");
  showing->add_flag("--json", typed->json, sheetHelp);
  context.runs(showing, [=](Shop& shop) { return tellJob(shop.jobSheet(typed->job), typed->json); });

  CLI::App* closing =
      context.add(group, "close", "Close a job; with something undone it wants a reason", "sturn job close J-1001");
  closing->add_option("JOB", typed->job, "The job's mark")->required()->type_name("");
  closing->add_option("--by", typed->by, "Who closes it")->type_name("");
  closing->add_option("--date", typed->date, "Day, such as 2026-03-14; else today")->type_name("");
  closing->add_option("--reason", typed->reason, "Why it is closed with something undone")->type_name("");
  closing->add_flag("--json", typed->json, sheetHelp);
  context.runs(closing, [=](Shop& shop) { return closeJob(shop, *typed); });

  CLI::App* listing = context.add(group, "list", "List the jobs that are open", "sturn job list");
  listing->add_flag("--json", typed->json, R"(Print {"jobs": [...]})");
  context.runs(listing, [=](Shop& shop) { return listJob(shop, typed->json); });
}

}  // namespace steadyturn
