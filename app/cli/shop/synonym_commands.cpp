// `sturn fastener synonym add|list|remove`.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "json_document.h"
#include "shop_commands.h"

namespace steadyturn {
namespace {

Result<Output> listSynonyms(Shop& shop, bool json) {
  const auto groups = shop.synonyms();
  if (!groups) return tl::unexpected(groups.error());
  if (json) return Output{.text = writeDocument({{"synonyms", *groups}}), .cautions = {}};
  std::string text;
  for (const SynonymGroup& group : *groups) {
    std::string line;
    for (const std::string& phrase : group) line += (line.empty() ? "" : " = ") + displayText(phrase);
    text += line + '\n';
  }
  return Output{.text = text.empty() ? "No synonym on the list.\n" : text, .cautions = {}};
}

Result<Output> toldSynonym(const Result<void>& done, std::string text) {
  if (!done) return tl::unexpected(done.error());
  return Output{.text = std::move(text), .cautions = {}};
}

}  // namespace

void addSynonymCommands(Context& context, CLI::App& fasteners) {
  CLI::App& group = *fasteners.add_subcommand("synonym", "What people call things: add, list, remove");
  group.require_subcommand(1);
  const auto phrase = std::make_shared<std::string>();
  const auto meaning = std::make_shared<std::string>();
  const auto json = std::make_shared<bool>(false);

  CLI::App* add = context.add(group, "add", "Find by PHRASE what is found by MEANING, and the other way round",
                              "sturn fastener synonym add 'sump plug' 'drain plug'");
  add->add_option("PHRASE", *phrase, "What people call it")->required()->type_name("");
  add->add_option("MEANING", *meaning, "What it means, or another phrase for it")->required()->type_name("");
  context.runs(add, [=](Shop& shop) {
    return toldSynonym(shop.addSynonym(*phrase, *meaning),
                       displayText(*phrase) + " = " + displayText(*meaning) + '\n');
  });

  CLI::App* list = context.add(group, "list", "List the phrases that mean the same", "sturn fastener synonym list");
  list->add_flag("--json", *json, R"(Print {"synonyms": [[...], ...]})");
  context.runs(list, [=](Shop& shop) { return listSynonyms(shop, *json); });

  CLI::App* remove =
      context.add(group, "remove", "Take a phrase off the list", "sturn fastener synonym remove 'sump plug'");
  remove->add_option("PHRASE", *phrase, "The phrase")->required()->type_name("");
  context.runs(remove, [=](Shop& shop) {
    return toldSynonym(shop.removeSynonym(*phrase), "Removed " + displayText(*phrase) + '\n');
  });
}

}  // namespace steadyturn
