// `sturn restore`: a backup becomes the shop.
#include <CLI/CLI.hpp>
#include <filesystem>

#include "display_text.h"
#include "json_document.h"
#include "shop_commands.h"
#include "shop_keeping.h"
#include "shop_people.h"
#include "with_shop.h"

namespace steadyturn {
namespace {

struct TypedRestore {
  std::string file;
  bool replace = false, json = false;
};

// Asked of the shop that would be replaced, where it can still be opened at all.
Result<void> mayReplace(const Caller& caller) {
  const auto allowed = withShop(
      caller,
      [](Shop& shop) -> Result<Output> {
        if (auto permitted = may(shop, Act::RestoreShop); !permitted) return tl::unexpected(permitted.error());
        return Output{};
      },
      Face::Text);
  if (allowed || allowed.error().front().kind != ProblemKind::NotPermitted) return {};
  return tl::unexpected(allowed.error());
}

Result<Output> restore(const Caller& caller, const TypedRestore& typed) {
  if (typed.replace && std::filesystem::exists(caller.shop)) {
    if (auto permitted = mayReplace(caller); !permitted) return tl::unexpected(permitted.error());
  }
  return withQt([&]() -> Result<Output> {
    const auto restored = restoreShop(typed.file, caller.shop, typed.replace);
    if (!restored) return tl::unexpected(restored.error());
    const auto head = writeCheckpoint(restored->head);
    if (typed.json) {
      OrderedJson document{{"shop", caller.shop}, {"checkpoint", head}};
      if (!restored->old.empty()) document["old"] = restored->old;
      return Output{.text = writeDocument(document), .cautions = {}};
    }
    std::string text = "Restored " + displayText(caller.shop) + " from " + displayText(typed.file) +
                       ", and proved every record of it.\nCheckpoint: " + head + '\n';
    if (!restored->old.empty()) text += "The shop that was there is kept as " + displayText(restored->old) + '\n';
    return Output{.text = text, .cautions = {}};
  });
}

}  // namespace

void addRestoreCommand(Context& context) {
  const auto typed = std::make_shared<TypedRestore>();
  CLI::App* command =
      context.add(context.app(), "restore", "Make a shop of a backup, once every record of it is proven",
                  "sturn restore backups/depot.2026-03-14.584-9f86d081884c7d65.backup");
  command->add_option("FILE", typed->file, "The backup")->required()->type_name("");
  command->add_flag("--replace", typed->replace, "Take the place of the shop that is there, which stays beside it");
  command->add_flag("--json", typed->json, R"(Print {"shop", "checkpoint", "old"})");
  command->final_callback([&context, typed] {
    if (context.shop().empty())
      refuseUsage("--shop", "is missing: name the shop to be, with --shop SHOP or STURN_SHOP");
    context.choose([&context, typed] { return restore(context.caller(), *typed); });
  });
}

}  // namespace steadyturn
