// `sturn choose`: which wrench, which setting, with what probability.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "fastener_text.h"
#include "figures.h"
#include "outlook_json.h"
#include "shop_commands.h"
#include "text_table.h"
#include "typed_values.h"

namespace steadyturn {
namespace {

struct TypedChoose {
  std::string fastener, asOf, length, offset, angle;
  bool json = false;
};

std::optional<Adapter> adapterFrom(const TypedChoose& typed, TypedValues& values) {
  if (typed.length.empty()) return std::nullopt;
  return Adapter{.wrenchLengthMm = values.number(typed.length, "wrench-length"),
                 .offsetMm = values.number(typed.offset, "offset"),
                 .angleDeg = values.optionalNumber(typed.angle, "angle").value_or(0)};
}

std::string optionsText(const Choice& choice) {
  if (choice.options.empty()) return "No wrench of this shop can be recommended today.\n";
  TextTable table({{"tool"},
                   {"set to", Side::Right},
                   {"within, %", Side::Right},
                   {"below, %", Side::Right},
                   {"above, %", Side::Right},
                   {"over part's limit, %", Side::Right},
                   {"expected", Side::Right},
                   {"drift"}});
  for (const Option& option : choice.options) {
    const DeliveryResult& delivery = option.delivery;
    table.row({option.tool, torqueText(option.setting), percentFigure(delivery.probabilityWithin),
               percentFigure(delivery.probabilityBelow), percentFigure(delivery.probabilityAbove),
               percentFigure(delivery.probabilityOverPartLimit), torqueText(delivery.expected),
               std::string(writeState(option.driftState))});
  }
  return table.text();
}

std::string refusedText(const Choice& choice) {
  if (choice.refused.empty()) return {};
  TextTable table({{"not offered"}, {"because"}});
  for (const RefusedTool& one : choice.refused) table.row({one.tool, writeRefusal(one.refusal)});
  return '\n' + table.text();
}

std::string choiceText(const FastenerChoice& choice, Date asOf) {
  std::string text = fastenerText(choice.fastener) + '\n';
  for (const std::string& warning : choice.warnings) text += "Caution: " + displayText(warning) + '\n';
  text += std::string("Caution: ") + serviceDataFirst + "\n\n";
  text += "Wrenches for it on " + writeDate(asOf) + ", best first:\n" + optionsText(choice.choice);
  return text + refusedText(choice.choice);
}

Result<Output> tellChoose(Shop& shop, const TypedChoose& typed) {
  TypedValues values;
  const Date asOf = values.optionalDate(typed.asOf, "as-of").value_or(shop.today());
  const auto adapter = adapterFrom(typed, values);
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const auto choice = shop.choose(typed.fastener, asOf, adapter);
  if (!choice) return tl::unexpected(choice.error());
  return Output{.text = typed.json ? writeDocument(choiceJson(*choice)) : choiceText(*choice, asOf), .cautions = {}};
}

}  // namespace

void addChooseCommand(Context& context) {
  const auto typed = std::make_shared<TypedChoose>();
  CLI::App* command = context.add(context.app(), "choose",
                                  "Say which wrench to take for a fastener, at which setting, with what probability",
                                  "sturn choose B12-drain --wrench-length 400 --offset 50");
  command->add_option("FASTENER", typed->fastener, "The fastener's mark")->required()->type_name("");
  command->add_option("--as-of", typed->asOf, "The day it is asked for, such as 2026-06-01; else today")
      ->type_name("");
  CLI::Option* length =
      command->add_option("--wrench-length", typed->length, "Hand's middle to the drive's centre, mm")->type_name("");
  CLI::Option* offset =
      command->add_option("--offset", typed->offset, "Drive's centre to the fastener's, mm")->type_name("");
  length->needs(offset);
  offset->needs(length);
  command->add_option("--angle", typed->angle, "Between offset and handle, degrees: 0 straight on (0)")
      ->type_name("")
      ->needs(length);
  command->add_flag("--json", typed->json, R"(Print {"fastener", "warnings", "options", "refused"})");
  context.runs(command, [=](Shop& shop) { return tellChoose(shop, *typed); });
}

}  // namespace steadyturn
