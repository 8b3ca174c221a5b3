// `sturn init` and `sturn demo`: make a shop.
#include <CLI/CLI.hpp>
#include <memory>

#include "json_document.h"
#include "progress_line.h"
#include "shop_commands.h"
#include "with_shop.h"

namespace steadyturn {
namespace {

struct TypedShop {
  std::string file, name;
  bool json = false;
};

std::string addressFor(const Context& context, const TypedShop& typed) {
  if (typed.file.empty() && context.shop().empty()) {
    refuseUsage("FILE", "is missing: name the new shop's file here, with --shop SHOP, or in STURN_SHOP");
  }
  return typed.file.empty() ? context.shop() : typed.file;
}

Result<Output> tellMade(Result<Shop> shop, bool json) {
  if (!shop) return tl::unexpected(std::move(shop.error()));
  if (json) {
    return Output{.text = writeDocument({{"shop", shop->address()}, {"name", shop->name()}}), .cautions = {}};
  }
  return Output{.text = "Made the shop " + shop->name() + " in " + shop->address() + '\n', .cautions = {}};
}

Result<Output> makeDemo(const std::string& address, bool json) {
  ProgressLine line("demo");
  return tellMade(Shop::createDemo(address, line.progress()), json);
}

CLI::App* addMaker(Context& context, const char* name, const char* purpose, const std::shared_ptr<TypedShop>& typed) {
  CLI::App* command = context.add(context.app(), name, purpose, std::string("sturn ") + name + " depot.steadyturn");
  command
      ->add_option("FILE", typed->file,
                   "The file to make, which must not exist yet, or postgresql://SERVER/DATABASE without a shop in it")
      ->type_name("");
  command->add_flag("--json", typed->json, R"(Print {"shop", "name"})");
  return command;
}

}  // namespace

void addShopFileCommands(Context& context) {
  const auto fresh = std::make_shared<TypedShop>();
  CLI::App* init = addMaker(context, "init", "Make a new, empty shop", fresh);
  init->add_option("--name", fresh->name, "The shop's name, as certificates carry it")->type_name("");
  init->final_callback([&context, fresh] {
    const std::string address = addressFor(context, *fresh);
    context.choose([address, fresh] {
      return withQt([&] { return tellMade(Shop::create(address, fresh->name), fresh->json); });
    });
  });

  const auto demo = std::make_shared<TypedShop>();
  CLI::App* command =
      addMaker(context, "demo", "Make an invented shop with years of history, the same every time", demo);
  command->final_callback([&context, demo] {
    const std::string address = addressFor(context, *demo);
    context.choose([address, demo] { return withQt([&] { return makeDemo(address, demo->json); }); });
  });
}

}  // namespace steadyturn
