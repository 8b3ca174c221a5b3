// `sturn key make|show|replace|passphrase` and `sturn ledger close`: who vouches for the ledger.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "json_document.h"
#include "passphrase.h"
#include "shop_commands.h"
#include "shop_signing.h"
#include "text_table.h"

namespace steadyturn {
namespace {

struct TypedKey {
  std::string holder, lost;
  bool json = false;
};

OrderedJson keyJson(const SigningKey& key) {
  OrderedJson json{{"key", key.id}, {"public_key", key.publicKey}, {"holder", key.holder}, {"made", key.made}};
  json["replaces"] = key.replaces.empty() ? OrderedJson() : OrderedJson(key.replaces);
  json["lost_reason"] = key.lostReason.empty() ? OrderedJson() : OrderedJson(key.lostReason);
  return json;
}

Output tellKey(const SigningKey& key, const char* what, bool json) {
  if (json) return {.text = writeDocument(keyJson(key)), .cautions = {}};
  return {.text = std::string(what) + " signing key " + key.id + " of " + displayText(key.holder) +
                  ".\nPublic key, to keep outside the shop (sturn verify --key):\n  " + key.publicKey + '\n',
          .cautions = {}};
}

Result<Output> make(Shop& shop, const TypedKey& typed) {
  const auto passphrase = askNewPassphrase(passphraseVariable, "Passphrase for the new key");
  if (!passphrase) return tl::unexpected(passphrase.error());
  const auto key = makeSigningKey(shop, typed.holder, *passphrase);
  if (!key) return tl::unexpected(key.error());
  return tellKey(*key, "Made", typed.json);
}

Result<SigningKey> nextKey(Shop& shop, const TypedKey& typed) {
  if (!typed.lost.empty()) {
    const auto passphrase = askNewPassphrase(newPassphraseVariable, "Passphrase for the new key");
    if (!passphrase) return tl::unexpected(passphrase.error());
    return replaceLostKey(shop, typed.holder, typed.lost, *passphrase);
  }
  const auto old = askPassphrase(passphraseVariable, "Passphrase of the key in force");
  if (!old) return tl::unexpected(old.error());
  const auto passphrase = askNewPassphrase(newPassphraseVariable, "Passphrase for the new key");
  if (!passphrase) return tl::unexpected(passphrase.error());
  return replaceSigningKey(shop, typed.holder, *old, *passphrase);
}

Result<Output> replace(Shop& shop, const TypedKey& typed) {
  const auto key = nextKey(shop, typed);
  if (!key) return tl::unexpected(key.error());
  return tellKey(*key, "Entered", typed.json);
}

Result<Output> changeWords(Shop& shop, const TypedKey& typed) {
  const auto old = askPassphrase(passphraseVariable, "Passphrase so far");
  if (!old) return tl::unexpected(old.error());
  const auto passphrase = askNewPassphrase(newPassphraseVariable, "New passphrase");
  if (!passphrase) return tl::unexpected(passphrase.error());
  if (const auto changed = changePassphrase(shop, *old, *passphrase); !changed)
    return tl::unexpected(changed.error());
  if (typed.json) return Output{.text = writeDocument({{"changed", true}}), .cautions = {}};
  return Output{.text = "The key opens with the new passphrase.\n", .cautions = {}};
}

Result<Output> showKey(Shop& shop, const TypedKey& typed) {
  const auto keys = signingKeys(shop);
  if (!keys) return tl::unexpected(keys.error());
  if (typed.json) {
    OrderedJson list = OrderedJson::array();
    for (const auto& key : *keys) list.push_back(keyJson(key));
    return Output{.text = writeDocument(list), .cautions = {}};
  }
  if (keys->empty()) return Output{.text = "The shop has no signing key.\n", .cautions = {}};
  TextTable table({{.heading = "key"}, {.heading = "holder"}, {.heading = "made"}, {.heading = "public key"}});
  for (const auto& key : *keys) table.row({key.id, displayText(key.holder), key.made.substr(0, 10), key.publicKey});
  return Output{.text = table.text() + "The last one is in force.\n", .cautions = {}};
}

Result<Output> closeKey(Shop& shop, const TypedKey& typed) {
  const auto passphrase = askPassphrase(passphraseVariable, "Passphrase of the signing key");
  if (!passphrase) return tl::unexpected(passphrase.error());
  const auto head = signCheckpoint(shop, *passphrase, "day closed");
  if (!head) return tl::unexpected(head.error());
  const auto checkpoint = std::to_string(head->checkpoint.size) + ':' + head->checkpoint.root;
  if (typed.json) {
    return Output{.text = writeDocument({{"checkpoint", checkpoint},
                                         {"entry", head->entry},
                                         {"time", head->checkpoint.at},
                                         {"key", head->key.id},
                                         {"public_key", head->key.publicKey},
                                         {"statement", head->statement},
                                         {"signature", head->checkpoint.signature}}),
                  .cautions = {}};
  }
  return Output{.text = "Closed with entry " + std::to_string(head->entry) + ", signed by key " + head->key.id +
                        " of " + displayText(head->key.holder) +
                        ".\nCheckpoint to keep outside the shop: " + checkpoint + '\n',
                .cautions = {}};
}

}  // namespace

void addKeyCommands(Context& context) {
  const auto typed = std::make_shared<TypedKey>();
  context.addGroup("key", "The key that signs the ledger: make, show, replace, passphrase");
  CLI::App& group = *context.app().get_subcommand("key");
  group.footer(
      "Passphrases are asked for at the terminal, or taken from STURN_PASSPHRASE (the key in force) and\n"
      "STURN_NEW_PASSPHRASE (the one to come). The shop: --shop SHOP, or STURN_SHOP in the environment.");

  CLI::App* making = context.add(group, "make", "Make the shop's first signing key, under a passphrase",
                                 "sturn key make --holder 'Petra Quill'");
  making->add_option("--holder", typed->holder, "Who has the passphrase")->required()->type_name("NAME");
  making->add_flag("--json", typed->json, R"(Print {"key", "public_key", "holder", "made", …})");
  context.runs(making, [=](Shop& shop) { return make(shop, *typed); });

  CLI::App* showing = context.add(group, "show", "List the shop's signing keys, the oldest first", "sturn key show");
  showing->add_flag("--json", typed->json, R"(Print [{"key", "public_key", "holder", "made", …}])");
  context.runs(showing, [=](Shop& shop) { return showKey(shop, *typed); });

  CLI::App* replacing =
      context.add(group, "replace", "Enter the next signing key, which the one in force signs as well",
                  "sturn key replace --holder 'Noor Vale'");
  replacing->add_option("--holder", typed->holder, "Who has the new passphrase")->required()->type_name("NAME");
  replacing
      ->add_option("--lost", typed->lost,
                   "Why the key in force can't sign any more; every verification will tell of it")
      ->type_name("REASON");
  replacing->add_flag("--json", typed->json, R"(Print {"key", "public_key", "holder", "made", …})");
  context.runs(replacing, [=](Shop& shop) { return replace(shop, *typed); });

  CLI::App* changing =
      context.add(group, "passphrase", "Change the passphrase of the key in force", "sturn key passphrase");
  changing->add_flag("--json", typed->json, R"(Print {"changed"})");
  context.runs(changing, [=](Shop& shop) { return changeWords(shop, *typed); });
}

void addLedgerClose(Context& context, CLI::App& ledger) {
  const auto typed = std::make_shared<TypedKey>();
  CLI::App* closing = context.add(ledger, "close", "Close a day: sign the ledger as it is now", "sturn ledger close");
  closing->add_flag("--json", typed->json,
                    R"(Print {"checkpoint", "entry", "time", "key", "public_key", "statement", "signature"})");
  context.runs(closing, [=](Shop& shop) { return closeKey(shop, *typed); });
}

}  // namespace steadyturn
