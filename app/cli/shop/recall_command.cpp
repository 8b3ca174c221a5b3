// `sturn recall`: every tightening that a failed check puts in doubt.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "figures.h"
#include "outlook_json.h"
#include "shop_commands.h"
#include "text_table.h"

namespace steadyturn {
namespace {

std::string recallText(const RecallList& recall) {
  if (!recall.foundBad) return displayText(recall.tool) + " has no failed check: nothing is in doubt.\n";
  std::string text = factLines({{"tool", recall.tool},
                                {"last good check", recall.lastGood ? writeDate(*recall.lastGood) : "none on record"},
                                {"found bad", writeDate(*recall.foundBad)}});
  if (recall.tightenings.empty()) return text + "No tightening between the two.\n";
  TextTable table({{"date"},
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
                   {"at worst above, %", Side::Right}});
  for (const RecallEntry& entry : recall.tightenings) {
    const RecallFigure& day = entry.result.onTheDay;
    const RecallFigure& worst = entry.result.worstCase;
    table.row({writeDate(entry.tightening.date), entry.tightening.job, entry.tightening.vehicle,
               entry.tightening.fastener, entry.fastener.component, torqueText(entry.tightening.settingTorque()),
               signedFigure(day.deviationPercent), percentFigure(day.probabilityBelow),
               percentFigure(day.probabilityAbove), percentFigure(day.probabilityOverPartLimit),
               percentFigure(worst.probabilityBelow), percentFigure(worst.probabilityAbove)});
  }
  return text + '\n' + table.text() +
         "\nWorst first. The deviation on the day is interpolated between the last good check and the failed one;\n"
         "at worst, the deviation found bad was there all along.\n";
}

}  // namespace

void addRecallCommand(Context& context) {
  const auto tool = std::make_shared<std::string>();
  const auto json = std::make_shared<bool>(false);
  CLI::App* command = context.add(context.app(), "recall",
                                  "List every tightening that a tool's failed check puts in doubt, worst first",
                                  "sturn recall TW-07");
  command->add_option("TOOL", *tool, "The tool's mark")->required()->type_name("");
  command->add_flag("--json", *json, R"(Print {"tool", "last_good", "found_bad", "tightenings": [...]})");
  context.runs(command, [=](Shop& shop) -> Result<Output> {
    const auto recall = shop.recall(*tool);
    if (!recall) return tl::unexpected(recall.error());
    return Output{.text = *json ? writeDocument(recallJson(*recall)) : recallText(*recall), .cautions = {}};
  });
}

}  // namespace steadyturn
