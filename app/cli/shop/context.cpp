#include "context.h"

#include <CLI/CLI.hpp>

#include "with_shop.h"

namespace steadyturn {

Context::Context(CLI::App& app, Command& chosen) : app_(app), chosen_(chosen) {
  app.add_option("--shop", caller_.shop,
                 "The shop: a file or postgresql://SERVER/DATABASE, before or after the command")
      ->type_name("SHOP")
      ->envname("STURN_SHOP");
  app.add_option("--as", caller_.as,
                 "Who does it, where the shop has accounts; the PIN comes from a prompt, standard input or STURN_PIN")
      ->type_name("NAME");
  app.add_flag("--audit", caller_.audit,
               "Open the shop to be looked at alone: nothing is written to it or beside it");
}

CLI::App* Context::add(CLI::App& parent, const std::string& name, const std::string& purpose,
                       const std::string& example) {
  CLI::App* command = parent.add_subcommand(name, purpose);
  command->footer("The shop: --shop SHOP, or STURN_SHOP in the environment.\nExample: " + example);
  return command;
}

CLI::App* Context::addGroup(const std::string& name, const std::string& purpose) {
  CLI::App* group = app_.add_subcommand(name, purpose);
  group->require_subcommand(1);
  group->footer("The shop: --shop SHOP, or STURN_SHOP in the environment.\nExample: sturn " + name + " list --help");
  return group;
}

void Context::runs(CLI::App* command, Work work, Face face) {
  command->final_callback([this, work = std::move(work), face] {
    if (caller_.shop.empty()) refuseUsage("--shop", "is missing: name the shop with --shop SHOP, or set STURN_SHOP");
    chosen_ = [this, work, face] { return withShop(caller_, work, face); };
  });
}

void refuseUsage(const std::string& argument, const std::string& message) {
  throw CLI::ValidationError(argument + ' ' + message, CLI::ExitCodes::ValidationError);
}

}  // namespace steadyturn
