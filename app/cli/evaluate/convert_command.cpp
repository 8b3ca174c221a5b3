#include <CLI/CLI.hpp>
#include <memory>

#include "display_text.h"
#include "evaluate_commands.h"
#include "value_json.h"

namespace steadyturn {
namespace {

constexpr int shownDigits = 5;

struct Typed {
  std::string value, from, to;
  bool json = false;
};

std::optional<Unit> unitOf(const std::string& typed, std::string_view field, Problems& problems) {
  const auto unit = parseUnit(typed);
  if (!unit) {
    problems.push_back({.field = std::string(field), .found = typed, .accepted = std::string(acceptedUnits())});
  }
  return unit;
}

Result<Output> convertTyped(const Typed& typed) {
  Problems problems;
  const auto value = parseTorqueNumber(typed.value, "VALUE");
  if (!value) problems = value.error();
  const auto from = unitOf(typed.from, "FROM", problems);
  const auto to = unitOf(typed.to, "TO", problems);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  const StatedTorque converted = convert({*value, *from}, *to);
  return Output{.text = typed.json ? writeDocument(torqueJson(converted)) : torqueText(converted, shownDigits) + '\n',
                .cautions = {}};
}

}  // namespace

void addConvertCommand(CLI::App& app, Command& chosen) {
  const auto typed = std::make_shared<Typed>();
  CLI::App* command = app.add_subcommand("convert", "Convert a torque from one unit to another");
  command->add_option("VALUE", typed->value, "The torque, 0 or more: 20, 12.5, 1e-3")->required()->type_name("");
  command->add_option("FROM", typed->from, "Its unit: " + std::string(acceptedUnits()))->required()->type_name("");
  command->add_option("TO", typed->to, "The unit wanted")->required()->type_name("");
  command->add_flag("--json", typed->json, R"(Print {"value", "unit"}, unrounded)");
  command->footer("Units are read as people type them: Nm, ft-lb, in lbf.\nExample: sturn convert 20 lbf.ft N.m");
  command->callback([typed, &chosen] { chosen = [typed] { return convertTyped(*typed); }; });
}

}  // namespace steadyturn
