// `sturn verify`, `sturn backup` and `sturn ledger`: nothing was changed, and a copy that is whole.
#include <CLI/CLI.hpp>
#include <QFile>
#include <filesystem>

#include "display_text.h"
#include "exit_status.h"
#include "figures.h"
#include "json_document.h"
#include "output_file.h"
#include "progress_line.h"
#include "shop_commands.h"
#include "shop_keeping.h"
#include "shop_proof.h"
#include "shop_signing.h"

namespace steadyturn {
namespace {

struct TypedProof {
  std::string checkpoint, key, issued, file;
  std::int64_t check = 0;
  std::size_t keep = usualBackupsKept;
  bool json = false;
};

// A file that is said to be a paper of this shop, and the entries that tell of it.
struct AskedFile {
  std::string path;
  std::vector<IssuedReportEntry> issues;
};

OrderedJson issueJson(const IssuedReportEntry& issue) {
  return {{"entry", issue.entry},           {"time", issue.at},      {"who", issue.who},
          {"report", issue.report.subject}, {"of", issue.report.id}, {"file_kind", issue.report.file},
          {"sha256", issue.report.sha256}};
}

OrderedJson verificationJson(const Verification& verification, const std::optional<AskedFile>& file) {
  OrderedJson faults = OrderedJson::array();
  for (const Fault& fault : verification.faults) faults.push_back({{"entry", fault.entry}, {"what", fault.what}});
  OrderedJson json{{"intact", verification.intact()},
                   {"entries", verification.entries},
                   {"head", verification.head},
                   {"faults", std::move(faults)}};
  json["signatures"] = verification.signatures;
  json["signed"] = nullptr;
  if (const auto& last = verification.lastSigned) {
    json["signed"] = {{"size", last->size},
                      {"time", last->at},
                      {"key", last->key},
                      {"public_key", last->publicKey},
                      {"holder", last->holder}};
  }
  json["notes"] = verification.notes;
  if (file) {
    OrderedJson issues = OrderedJson::array();
    for (const auto& issue : file->issues) issues.push_back(issueJson(issue));
    json["file"] = {{"path", file->path}, {"issued", std::move(issues)}};
  }
  return json;
}

std::string signatureText(const Verification& verification) {
  const auto& last = verification.lastSigned;
  if (!last) return "Not signed: the shop has no signing key (sturn key make).\n";
  auto text = "Signed up to entry " + std::to_string(last->size) + " by key " + last->key + " of " +
              displayText(last->holder) + " at " + last->at +
              "; good signatures in all: " + std::to_string(verification.signatures) + ".\n";
  const auto later = verification.entries - static_cast<std::int64_t>(last->size);
  if (later > 1) text += std::to_string(later) + " entries stand after it (sturn ledger close signs them).\n";
  return text;
}

std::string fileText(const AskedFile& file) {
  if (file.issues.empty()) {
    return "NOT ISSUED: no entry tells of a file with the bytes of " + displayText(file.path) + ".\n";
  }
  std::string text;
  for (const auto& issue : file.issues) {
    text += displayText(file.path) + " was issued as " + displayText(issue.report.subject) +
            (issue.report.id.empty() ? "" : " " + displayText(issue.report.id)) + " at " + issue.at +
            (issue.who.empty() ? "" : " by " + displayText(issue.who)) + ": entry " + std::to_string(issue.entry) +
            ".\n";
  }
  return text;
}

std::string verificationText(const Verification& verification, const std::optional<AskedFile>& file) {
  const std::string head = std::to_string(verification.entries) + ":" + verification.head;
  std::string after = signatureText(verification);
  for (const auto& note : verification.notes) after += "Note: " + displayText(note) + ".\n";
  if (file) after += fileText(*file);
  if (verification.intact()) {
    return "Intact: " + std::to_string(verification.entries) +
           " entries, and every record agrees with its own.\nCheckpoint to keep outside the shop: " + head + '\n' +
           after;
  }
  std::string text = "DAMAGED:\n";
  for (const Fault& fault : verification.faults) {
    text += "  " + (fault.entry > 0 ? "entry " + std::to_string(fault.entry) + ": " : std::string()) +
            displayText(fault.what) + '\n';
  }
  if (verification.unlisted > 0) text += "  and " + std::to_string(verification.unlisted) + " more\n";
  return text + "Head as it stands: " + head + '\n' + after;
}

Result<std::optional<AskedFile>> lookUp(const Shop& shop, const std::string& path) {
  if (path.empty()) return std::nullopt;
  QFile file(QString::fromStdString(path));
  if (!file.open(QIODevice::ReadOnly)) {
    return refuse(
        {.kind = ProblemKind::FileMissing, .field = "file", .found = path, .accepted = "a file that can be read"});
  }
  const QByteArray bytes = file.readAll();
  auto issues = issuesOf(shop, {bytes.constData(), static_cast<std::size_t>(bytes.size())});
  if (!issues) return tl::unexpected(issues.error());
  return AskedFile{.path = path, .issues = std::move(*issues)};
}

Result<Output> verify(Shop& shop, const TypedProof& typed) {
  std::optional<Checkpoint> checkpoint;
  if (!typed.checkpoint.empty()) {
    const auto parsed = parseCheckpoint(typed.checkpoint, "checkpoint");
    if (!parsed) return tl::unexpected(parsed.error());
    checkpoint = *parsed;
  }
  const auto file = lookUp(shop, typed.issued);
  if (!file) return tl::unexpected(file.error());
  ProgressLine line("verify");
  const auto verification = verifyShop(shop, checkpoint, line.progress(), typed.key);
  if (!verification) return tl::unexpected(verification.error());
  const bool good = verification->intact() && !(*file && (*file)->issues.empty());
  return Output{.text = typed.json ? writeDocument(verificationJson(*verification, *file))
                                   : verificationText(*verification, *file),
                .cautions = {},
                .status = good ? exit_status::done : exit_status::damageFound};
}

// Into a folder, under a name of its own; older ones go.
Result<Output> backupIntoFolder(Shop& shop, const TypedProof& typed) {
  const auto kept = backupInto(shop, typed.file, typed.keep);
  if (!kept) return tl::unexpected(kept.error());
  const auto head = writeCheckpoint(kept->head);
  if (typed.json) {
    return Output{.text = writeDocument({{"file", kept->file}, {"checkpoint", head}, {"removed", kept->removed}}),
                  .cautions = {}};
  }
  std::string text = (kept->made ? "Copied the shop to " : "Nothing is new since ") + displayText(kept->file) +
                     ".\nCheckpoint to keep outside the shop: " + head + '\n';
  for (const std::string& name : kept->removed) text += "Removed " + displayText(name) + '\n';
  return Output{.text = text, .cautions = {}};
}

Result<Output> backup(Shop& shop, const TypedProof& typed) {
  if (std::filesystem::is_directory(typed.file)) return backupIntoFolder(shop, typed);
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

Result<Output> exportLedger(Shop& shop, const TypedProof& typed) {
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

Result<Output> prove(Shop& shop, const TypedProof& typed) {
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
  const auto typed = std::make_shared<TypedProof>();
  CLI::App* verifying =
      context.add(context.app(), "verify", "Prove from the tables that no record was changed, removed or slipped in",
                  "sturn verify --checkpoint 584:9f86d081…");
  verifying
      ->add_option("--checkpoint", typed->checkpoint,
                   "An older head of the ledger, as a certificate or a note outside the shop has it: today's ledger "
                   "must go on from it")
      ->type_name("SIZE:ROOT");
  verifying
      ->add_option("--key", typed->key,
                   "A public key that is known from outside the shop: it must have signed the ledger, and each later "
                   "key been signed by the one before")
      ->type_name("HEX");
  verifying
      ->add_option("--file", typed->issued,
                   "A paper: was a file with these very bytes issued by this shop? Status 1 if not")
      ->type_name("FILE");
  verifying->add_flag("--json", typed->json,
                      R"(Print {"intact", "entries", "head", "faults", "signatures", "signed", "notes"})");
  context.runs(verifying, [=](Shop& shop) { return verify(shop, *typed); });

  CLI::App* copying =
      context.add(context.app(), "backup", "Copy the shop to a new file, and prove that the copy is whole",
                  "sturn backup depot-2026-03-14.steadyturn");
  copying
      ->add_option(
          "FILE", typed->file,
          "The file to make, which must not exist yet; or a folder, where it gets a name with the day and the "
          "ledger's head")
      ->required()
      ->type_name("");
  copying
      ->add_option("--keep", typed->keep,
                   "In a folder: how many of this shop's backups stay, besides one a month (14)")
      ->type_name("")
      ->check(CLI::Range(1, 10'000));
  copying->add_flag("--json", typed->json, R"(Print {"file", "checkpoint"})");
  context.runs(copying, [=](Shop& shop) { return backup(shop, *typed); });

  context.addGroup("ledger", "The ledger behind the records: close, export, prove");
  CLI::App& group = *context.app().get_subcommand("ledger");
  addLedgerClose(context, group);
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
