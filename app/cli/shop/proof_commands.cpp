// `sturn verify` and `sturn backup`: nothing was changed, and a copy that is whole.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "exit_status.h"
#include "figures.h"
#include "json_document.h"
#include "output_file.h"
#include "progress_line.h"
#include "shop_commands.h"
#include "shop_proof.h"

namespace steadyturn {
namespace {

struct Typed {
  std::string checkpoint, file;
  std::int64_t check = 0;
  bool json = false;
};

OrderedJson verificationJson(const Verification& verification) {
  OrderedJson faults = OrderedJson::array();
  for (const Fault& fault : verification.faults) faults.push_back({{"entry", fault.entry}, {"what", fault.what}});
  return {{"intact", verification.intact()},
          {"entries", verification.entries},
          {"head", verification.head},
          {"faults", std::move(faults)}};
}

std::string verificationText(const Verification& verification) {
  const std::string head = std::to_string(verification.entries) + ":" + verification.head;
  if (verification.intact()) {
    return "Intact: " + std::to_string(verification.entries) +
           " entries, and every record agrees with its own.\nCheckpoint to keep outside the shop: " + head + '\n';
  }
  std::string text = "DAMAGED:\n";
  for (const Fault& fault : verification.faults) {
    text += "  " + (fault.entry > 0 ? "entry " + std::to_string(fault.entry) + ": " : std::string()) +
            displayText(fault.what) + '\n';
  }
  if (verification.unlisted > 0) text += "  and " + std::to_string(verification.unlisted) + " more\n";
  return text + "Head as it stands: " + head + '\n';
}

Result<Output> verify(Shop& shop, const Typed& typed) {
  std::optional<Checkpoint> checkpoint;
  if (!typed.checkpoint.empty()) {
    const auto parsed = parseCheckpoint(typed.checkpoint, "checkpoint");
    if (!parsed) return tl::unexpected(parsed.error());
    checkpoint = *parsed;
  }
  ProgressLine line("verify");
  const auto verification = verifyShop(shop, checkpoint, line.progress());
  if (!verification) return tl::unexpected(verification.error());
  return Output{.text = typed.json ? writeDocument(verificationJson(*verification)) : verificationText(*verification),
                .cautions = {},
                .status = verification->intact() ? exit_status::done : exit_status::damageFound};
}

Result<Output> backup(Shop& shop, const Typed& typed) {
  const auto head = backupShop(shop, typed.file);
  if (!head) return tl::unexpected(head.error());
  if (typed.json) {
    return Output{.text = writeDocument({{"file", typed.file}, {"checkpoint", writeCheckpoint(*head)}}),
                  .cautions = {}};
  }
  return Output{.text = "Copied the shop to " + displayText(typed.file) +
                        ", opened the copy and compared its ledger.\n" +
                        "Checkpoint to keep outside the shop: " + writeCheckpoint(*head) + '\n',
                .cautions = {}};
}

Result<Output> exportLedger(Shop& shop, const Typed& typed) {
  std::string lines;
  std::size_t entries = 0;
  const auto walked = walkLedger(shop, [&](std::string_view entry) {
    lines.append(entry).push_back('\n');
    ++entries;
    return true;
  });
  if (!walked) return tl::unexpected(walked.error());
  const auto head = ledgerHead(shop);
  if (!head) return tl::unexpected(head.error());
  if (auto written = writeOutputFile(typed.file, lines); !written) return tl::unexpected(written.error());
  if (typed.json) {
    return Output{
        .text = writeDocument({{"file", typed.file}, {"entries", entries}, {"checkpoint", writeCheckpoint(*head)}}),
        .cautions = {}};
  }
  return Output{.text = "Wrote " + std::to_string(entries) + " entries to " + displayText(typed.file) +
                        ".\nCheckpoint: " + writeCheckpoint(*head) + '\n',
                .cautions = {}};
}

Result<Output> prove(Shop& shop, const Typed& typed) {
  const auto proof = proveCheck(shop, typed.check);
  if (!proof) return tl::unexpected(proof.error());
  if (typed.json) {
    return Output{.text = writeDocument({{"check", typed.check},
                                         {"sequence", proof->sequence},
                                         {"leaf", proof->leaf},
                                         {"checkpoint", writeCheckpoint(proof->head)},
                                         {"path", proof->path}}),
                  .cautions = {}};
  }
  std::string text = "Check " + std::to_string(typed.check) + " is entry " + std::to_string(proof->sequence) +
                     ".\nHash of the entry: " + proof->leaf + "\nCheckpoint: " + writeCheckpoint(proof->head) +
                     "\nPath, from the entry up (RFC 9162, 2.1.3.2):\n";
  for (const std::string& hash : proof->path) text += "  " + hash + '\n';
  return Output{.text = text, .cautions = {}};
}

}  // namespace

void addProofCommands(Context& context) {
  const auto typed = std::make_shared<Typed>();
  CLI::App* verifying =
      context.add(context.app(), "verify", "Prove from the tables that no record was changed, removed or slipped in",
                  "sturn verify --checkpoint 584:9f86d081…");
  verifying
      ->add_option("--checkpoint", typed->checkpoint,
                   "An older head of the ledger, as a certificate or a note outside the shop has it: today's ledger "
                   "must go on from it")
      ->type_name("SIZE:ROOT");
  verifying->add_flag("--json", typed->json, R"(Print {"intact", "entries", "head", "faults"})");
  context.runs(verifying, [=](Shop& shop) { return verify(shop, *typed); });

  CLI::App* copying =
      context.add(context.app(), "backup", "Copy the shop to a new file, and prove that the copy is whole",
                  "sturn backup depot-2026-03-14.steadyturn");
  copying->add_option("FILE", typed->file, "The file to make; must not exist yet")->required()->type_name("");
  copying->add_flag("--json", typed->json, R"(Print {"file", "checkpoint"})");
  context.runs(copying, [=](Shop& shop) { return backup(shop, *typed); });

  context.addGroup("ledger", "The ledger behind the records: export, prove");
  CLI::App& group = *context.app().get_subcommand("ledger");
  CLI::App* exporting = context.add(group, "export", "Write every entry as it is hashed, one a line",
                                    "sturn ledger export ledger.jsonl");
  exporting->add_option("FILE", typed->file, "The file to write")->required()->type_name("");
  exporting->add_flag("--json", typed->json, R"(Print {"file", "entries", "checkpoint"})");
  context.runs(exporting, [=](Shop& shop) { return exportLedger(shop, *typed); });

  CLI::App* proving = context.add(group, "prove", "Print the hashes that lead from a check to the checkpoint",
                                  "sturn ledger prove 42");
  proving->add_option("CHECK", typed->check, "The check's number")->required()->type_name("");
  proving->add_flag("--json", typed->json, R"(Print {"check", "sequence", "leaf", "checkpoint", "path"})");
  context.runs(proving, [=](Shop& shop) { return prove(shop, *typed); });
}

}  // namespace steadyturn
