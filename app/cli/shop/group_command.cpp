// `sturn tool group`: which tools the shop itself says are alike.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "json_document.h"
#include "shop_commands.h"
#include "shop_fleet.h"
#include "text_table.h"

namespace steadyturn {
namespace {

struct TypedGroup {
  std::string tool, name;
  bool automatic = false, json = false;
};

Result<Output> listGroups(Shop& shop, bool json) {
  const auto groups = toolGroups(shop);
  if (!groups) return tl::unexpected(groups.error());
  OrderedJson listed = OrderedJson::array();
  TextTable table({{"tool"}, {"group"}});
  for (const auto& [tool, name] : *groups) {
    listed.push_back({{"tool", tool}, {"group", name}});
    table.row({tool, name});
  }
  if (json) return Output{.text = writeDocument({{"groups", std::move(listed)}}), .cautions = {}};
  const char* none = "No group of the shop's own: tools are alike by maker, kind and maximum.\n";
  return Output{.text = groups->empty() ? none : table.text(), .cautions = {}};
}

Result<Output> group(Shop& shop, const TypedGroup& typed) {
  if (typed.tool.empty()) return listGroups(shop, typed.json);
  if (typed.name.empty() && !typed.automatic) {
    return refuse({.field = "name", .accepted = "the name of a group, or --automatic"});
  }
  if (auto done = nameToolGroup(shop, typed.tool, typed.name); !done) return tl::unexpected(done.error());
  if (typed.json) {
    OrderedJson name = nullptr;
    if (!typed.automatic) name = typed.name;
    return Output{.text = writeDocument({{"tool", typed.tool}, {"group", std::move(name)}}), .cautions = {}};
  }
  return Output{.text = displayText(typed.tool) +
                        (typed.automatic ? " is grouped by maker, kind and maximum"
                                         : " is in the group " + displayText(typed.name)) +
                        '\n',
                .cautions = {}};
}

}  // namespace

void addGroupCommand(Context& context, CLI::App& tools) {
  const auto typed = std::make_shared<TypedGroup>();
  CLI::App* command = context.add(tools, "group",
                                  "Say which tools are alike, so that they lend each other their drift; without a "
                                  "tool, list the groups",
                                  "sturn tool group W08 --name 'wheel wrenches'");
  command->add_option("TOOL", typed->tool, "The tool's mark")->type_name("");
  CLI::Option* name = command->add_option("--name", typed->name, "The name that tools alike share")->type_name("");
  command->add_flag("--automatic", typed->automatic, "By maker, kind and maximum again")->excludes(name);
  command->add_flag("--json", typed->json, R"(Print {"tool", "group"}; without a tool {"groups": [...]})");
  context.runs(command, [=](Shop& shop) { return group(shop, *typed); });
}

}  // namespace steadyturn
