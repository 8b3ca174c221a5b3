// `sturn user add|list|role|pin|close|recover|code`: who may write in the shop.
#include <CLI/CLI.hpp>
#include <cstdlib>

#include "display_text.h"
#include "json_document.h"
#include "pin_prompt.h"
#include "shop_commands.h"
#include "shop_people.h"
#include "text_table.h"

namespace steadyturn {
namespace {

constexpr const char* newPin = "STURN_NEW_PIN";

struct TypedUser {
  std::string user, role;
  bool json = false;
};

Problem missing(const char* field, const std::string& accepted) { return {.field = field, .accepted = accepted}; }

// A first account's PIN is the one that later commands find in STURN_PIN.
std::optional<std::string> pinForNewcomer(const Shop& shop, const std::string& user) {
  const bool inEnvironment = std::getenv(newPin) == nullptr && std::getenv("STURN_PIN") != nullptr;
  return askNewPin("PIN for " + displayText(user), !hasUsers(shop) && inEnvironment ? "STURN_PIN" : newPin);
}

Result<Output> add(Shop& shop, const TypedUser& typed) {
  const auto role = parseRole(typed.role);
  if (!role) return tl::unexpected(role.error());
  if (auto allowed = may(shop, Act::ManageUsers); !allowed) return tl::unexpected(allowed.error());
  auto pin = pinForNewcomer(shop, typed.user);
  const bool madeUp = !pin || pin->empty();
  if (madeUp) pin = freshPin();
  const auto added = addUser(shop, typed.user, *role, *pin);
  if (!added) return tl::unexpected(added.error());
  if (typed.json) {
    OrderedJson document{{"user", typed.user}, {"role", writeRole(*role)}};
    if (madeUp) document["pin"] = *pin;
    if (!added->recoveryCode.empty()) document["recovery_code"] = added->recoveryCode;
    return Output{.text = writeDocument(document), .cautions = added->warnings};
  }
  std::string text = "Added " + displayText(typed.user) + " as " + std::string(writeRole(*role)) + ".\n";
  if (madeUp) text += "The PIN to begin with: " + *pin + " (change it with sturn user pin)\n";
  if (!added->recoveryCode.empty()) {
    text +=
        "From now on whoever writes in this shop says so with --as NAME and a PIN.\n"
        "Recovery code, shown this once: " +
        added->recoveryCode +
        "\nKeep it on paper with the leads: it gives a lead who forgot a new PIN (sturn user recover NAME).\n";
  }
  return Output{.text = text, .cautions = added->warnings};
}

Result<Output> listUser(Shop& shop, bool json) {
  const auto all = users(shop);
  if (!all) return tl::unexpected(all.error());
  OrderedJson rows = OrderedJson::array();
  TextTable table({{"user"}, {"role"}, {"account"}, {"since"}});
  for (const Account& account : *all) {
    rows.push_back({{"user", account.name},
                    {"role", writeRole(account.role)},
                    {"open", account.open},
                    {"since", account.since}});
    table.row({account.name, std::string(writeRole(account.role)), account.open ? "open" : "closed",
               account.since.substr(0, 10)});
  }
  if (json) return Output{.text = writeDocument({{"users", std::move(rows)}}), .cautions = {}};
  if (all->empty()) return Output{.text = "No accounts: whoever has the file may write in it.\n", .cautions = {}};
  return Output{.text = table.text(), .cautions = {}};
}

Result<Output> toldUser(const Result<void>& done, const std::string& text) {
  if (!done) return tl::unexpected(done.error());
  return Output{.text = text, .cautions = {}};
}

Result<Output> setRole(Shop& shop, const TypedUser& typed) {
  const auto role = parseRole(typed.role);
  if (!role) return tl::unexpected(role.error());
  return toldUser(changeRole(shop, typed.user, *role),
                  displayText(typed.user) + " has the role " + std::string(writeRole(*role)) + ".\n");
}

Result<Output> setPin(Shop& shop, const TypedUser& typed) {
  const auto pin = askNewPin("New PIN for " + displayText(typed.user), newPin);
  if (!pin) return refuse(missing("PIN", "a new PIN, from a prompt, standard input or STURN_NEW_PIN"));
  return toldUser(changePin(shop, typed.user, *pin), "The PIN of " + displayText(typed.user) + " is changed.\n");
}

Result<Output> codeText(const Result<std::string>& code, const std::string& before, bool json) {
  if (!code) return tl::unexpected(code.error());
  if (json) return Output{.text = writeDocument({{"recovery_code", *code}}), .cautions = {}};
  return Output{
      .text = before + "Recovery code, shown this once: " + *code + "\nThe one before is of no use any more.\n",
      .cautions = {}};
}

Result<Output> recover(Shop& shop, const TypedUser& typed) {
  const auto code = askPin("Recovery code", "STURN_RECOVERY_CODE");
  if (!code)
    return refuse(missing("recovery code", "the code, from a prompt, standard input or STURN_RECOVERY_CODE"));
  const auto pin = askNewPin("New PIN for " + displayText(typed.user), newPin);
  if (!pin) return refuse(missing("PIN", "a new PIN, from a prompt, standard input or STURN_NEW_PIN"));
  return codeText(recoverLead(shop, typed.user, *code, *pin),
                  "The PIN of " + displayText(typed.user) + " is set anew.\n", typed.json);
}

CLI::App* addNamed(Context& context, CLI::App& group, const std::shared_ptr<TypedUser>& typed, const char* name,
                   const char* purpose, const char* example) {
  CLI::App* command = context.add(group, name, purpose, example);
  command->add_option("NAME", typed->user, "Whose account")->required()->type_name("");
  return command;
}

}  // namespace

void addUserCommands(Context& context) {
  CLI::App& group =
      *context.addGroup("user", "Who may write in the shop: add, list, role, pin, close, recover, code");
  const auto typed = std::make_shared<TypedUser>();
  const auto addRole = [&](CLI::App& command) {
    command.add_option("--role", typed->role, "lead, technician or auditor")->required()->type_name("");
  };
  CLI::App* adding = addNamed(context, group, typed, "add",
                              "Add an account; the first, a lead's, closes the shop to whoever has none",
                              "sturn user add petra --role technician --as nora");
  addRole(*adding);
  adding->add_flag("--json", typed->json, R"(Print {"user", "role", "pin", "recovery_code"})");
  context.runs(adding, [=](Shop& shop) { return add(shop, *typed); });

  CLI::App* listing = context.add(group, "list", "List the accounts", "sturn user list");
  listing->add_flag("--json", typed->json, R"(Print {"users": [...]})");
  context.runs(listing, [=](Shop& shop) { return listUser(shop, typed->json); });

  CLI::App* role = addNamed(context, group, typed, "role", "Give somebody another role",
                            "sturn user role petra --role lead --as nora");
  addRole(*role);
  context.runs(role, [=](Shop& shop) { return setRole(shop, *typed); });

  CLI::App* pin = addNamed(context, group, typed, "pin", "Change a PIN: one's own, or as a lead anybody's",
                           "sturn user pin petra --as petra");
  context.runs(pin, [=](Shop& shop) { return setPin(shop, *typed); });

  CLI::App* closing = addNamed(context, group, typed, "close", "Close an account; what it did stays on record",
                               "sturn user close petra --as nora");
  context.runs(closing, [=](Shop& shop) {
    return toldUser(closeUser(shop, typed->user), "The account of " + displayText(typed->user) + " is closed.\n");
  });

  CLI::App* recovering =
      addNamed(context, group, typed, "recover",
               "Set a new PIN for a lead who forgot it, with the shop's recovery code", "sturn user recover nora");
  recovering->add_flag("--json", typed->json, R"(Print {"recovery_code"}: the next one)");
  context.runs(recovering, [=](Shop& shop) { return recover(shop, *typed); });

  CLI::App* code = context.add(group, "code", "Make a new recovery code; the one before is of no use any more",
                               "sturn user code --as nora");
  code->add_flag("--json", typed->json, R"(Print {"recovery_code"})");
  context.runs(code, [=](Shop& shop) { return codeText(makeRecoveryCode(shop), {}, typed->json); });
}

}  // namespace steadyturn
