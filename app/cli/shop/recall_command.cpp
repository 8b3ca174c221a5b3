// `sturn recall`: every tightening that a failed check puts in doubt, and what is decided about it.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "figures.h"
#include "outlook_json.h"
#include "shop_commands.h"
#include "text_table.h"

namespace steadyturn {
namespace {

std::string decisionText(const std::optional<RecallDecision>& decision) {
  return decision ? std::string(writeRecallAction(decision->action)) : "-";
}

std::string stateText(const RecallList& recall) {
  if (recall.closing) {
    return "Closed on " + writeDate(recall.closing->date) +
           (recall.closing->by.empty() ? "" : " by " + displayText(recall.closing->by)) + ".\n";
  }
  if (const int open = recall.undecided(); open > 0) {
    return std::to_string(open) + " of " + std::to_string(recall.tightenings.size()) +
           " still to be decided: sturn recall " + displayText(recall.tool) +
           " --decide NO --action accept|re-torque|replace-part --reason TEXT --by NAME\n";
  }
  return "All decided. Close it: sturn recall " + displayText(recall.tool) + " --close --by NAME\n";
}

// A tool whose very first check failed: what tools like it make likely, beside the deviation found bad throughout.
std::string borrowedText(const RecallList& recall) {
  if (recall.borrowed.empty()) return {};
  TextTable table({{"no.", Side::Right},
                   {"date"},
                   {"deviation, %", Side::Right},
                   {"below, %", Side::Right},
                   {"above, %", Side::Right},
                   {"over part's limit, %", Side::Right}});
  for (const RecallLine& entry : recall.tightenings) {
    if (!entry.result.byFleet) continue;
    const RecallFigure& day = *entry.result.byFleet;
    table.row({std::to_string(entry.tightening.id), writeDate(entry.tightening.date),
               signedFigure(day.deviationPercent), percentFigure(day.probabilityBelow),
               percentFigure(day.probabilityAbove), percentFigure(day.probabilityOverPartLimit)});
  }
  return "\nNo good check to interpolate from: above, the deviation found bad was there all along. By tools like "
         "it:\n" +
         table.text() + recall.borrowed + ".\n";
}

std::string recallText(const RecallList& recall) {
  if (!recall.foundBad) return displayText(recall.tool) + " has no failed check: nothing is in doubt.\n";
  std::string text = factLines({{"tool", recall.tool},
                                {"last good check", recall.lastGood ? writeDate(*recall.lastGood) : "none on record"},
                                {"found bad", writeDate(*recall.foundBad)}});
  if (recall.tightenings.empty()) return text + "No tightening between the two.\n";
  TextTable table({{"no.", Side::Right},
                   {"date"},
                   {"job"},
                   {"vehicle"},
                   {"fastener"},
                   {"component"},
                   {"setting", Side::Right},
                   {"deviation, %", Side::Right},
                   {"below, %", Side::Right},
                   {"above, %", Side::Right},
                   {"over part's limit, %", Side::Right},
                   {"at worst below, %", Side::Right},
                   {"at worst above, %", Side::Right},
                   {"decided"}});
  for (const RecallLine& entry : recall.tightenings) {
    const RecallFigure& day = entry.result.onTheDay;
    const RecallFigure& worst = entry.result.worstCase;
    table.row({std::to_string(entry.tightening.id), writeDate(entry.tightening.date), entry.tightening.job,
               entry.tightening.vehicle, entry.tightening.fastener, entry.fastener.component,
               torqueText(entry.tightening.settingTorque()), signedFigure(day.deviationPercent),
               percentFigure(day.probabilityBelow), percentFigure(day.probabilityAbove),
               percentFigure(day.probabilityOverPartLimit), percentFigure(worst.probabilityBelow),
               percentFigure(worst.probabilityAbove), decisionText(entry.decision)});
  }
  const char* onTheDay = recall.lastGood ? "interpolated between the last good check and the failed one"
                                         : "the one found bad, for want of a good check before";
  return text + '\n' + table.text() + borrowedText(recall) + '\n' + stateText(recall) +
         "\nWorst first. The deviation on the day is " + onTheDay +
         ";\nat worst, the deviation found bad was there all along.\n";
}

struct TypedRecall {
  std::string tool, action, reason, by;
  std::optional<std::int64_t> decide;
  bool close = false, json = false;
};

Result<RecallList> done(Shop& shop, const TypedRecall& typed) {
  if (typed.close) return shop.closeRecall(typed.tool, typed.by, typed.reason);
  if (!typed.decide) return shop.recall(typed.tool);
  const auto action = parseRecallAction(typed.action);
  if (!action) return tl::unexpected(action.error());
  return shop.decideRecall(typed.tool,
                           {.tightening = *typed.decide, .action = *action, .reason = typed.reason, .by = typed.by});
}

}  // namespace

void addRecallCommand(Context& context) {
  const auto typed = std::make_shared<TypedRecall>();
  CLI::App* command =
      context.add(context.app(), "recall",
                  "List every tightening that a tool's failed check puts in doubt, worst first; decide "
                  "about each",
                  "sturn recall TW-07 --decide 4711 --action re-torque --by \"A. Lead\"");
  command->add_option("TOOL", typed->tool, "The tool's mark")->required()->type_name("");
  auto* decide = command->add_option("--decide", typed->decide, "Decide about the tightening of this number (no.)")
                     ->type_name("NO");
  auto* action = command->add_option("--action", typed->action, "accept, re-torque or replace-part")->type_name("");
  action->needs(decide);
  decide->needs(action);
  command->add_flag("--close", typed->close, "Close the recall: every tightening is decided")->excludes(decide);
  command->add_option("--reason", typed->reason, "Why it may stay as it is (accept); what was done; a closing note")
      ->type_name("");
  command->add_option("--by", typed->by, "Who decides")->type_name("");
  command->add_flag("--json", typed->json,
                    R"(Print {"tool", "last_good", "found_bad", "tightenings": [...], "undecided", "closed"})");
  context.runs(command, [=](Shop& shop) -> Result<Output> {
    const auto recall = done(shop, *typed);
    if (!recall) return tl::unexpected(recall.error());
    return Output{.text = typed->json ? writeDocument(recallJson(*recall)) : recallText(*recall), .cautions = {}};
  });
}

}  // namespace steadyturn
