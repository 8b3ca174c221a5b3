#include "verifier.h"

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>

#include "differences.h"
#include "entry_reading.h"
#include "loose_rows.h"
#include "present_status.h"
#include "record_match.h"
#include "signature_trail.h"
#include "tree_comparison.h"

namespace steadyturn {

namespace {

class FaultList {
 public:
  explicit FaultList(Verification& into) : into_(into) {}
  void operator()(std::int64_t entry, std::string what) {
    if (into_.faults.size() < mostFaults) {
      into_.faults.push_back({.entry = entry, .what = std::move(what)});
    } else {
      ++into_.unlisted;
    }
  }

 private:
  Verification& into_;
};

void compareWithCheckpoint(const GrowingTree& tree, const Checkpoint& checkpoint, const ReportFault& report) {
  const auto root = tree.root();
  if (root == checkpoint.root) return;
  report(static_cast<std::int64_t>(checkpoint.size),
         "the ledger does not go on from the checkpoint: its first " + std::to_string(checkpoint.size) +
             " entries have the root " + writeHash(root) + ", the checkpoint says " + writeHash(checkpoint.root));
}

}  // namespace

// NOLINTNEXTLINE(performance-unnecessary-value-param): the records are moved on into their matches
Result<Verification> verifyLedger(Database& database, std::vector<ProvenRows> records, const Witness& witness,
                                  const std::function<bool(double)>& progress) {
  Verification result;
  const ReportFault report = FaultList(result);
  std::map<std::string, RecordMatch, std::less<>> kinds;
  for (auto& rows : records) {
    std::string kind(rows.kind().kind);
    kinds.try_emplace(std::move(kind), std::move(rows), report);
  }
  // An entry that is gone or changed moves all hashes above it: then these add nothing to what is said of the entry.
  bool entriesHold = true;
  Verification ofTree;
  TreeComparison comparison(database, FaultList(ofTree));
  GrowingTree tree([&](int level, std::uint64_t position, const Hash& root) {
    if (entriesHold) comparison.completed(level, position, root);
  });
  PresentStatus status;
  SignatureTrail signatures(report);
  EntryReading reading(database, [&](std::int64_t entry, std::string what) {
    entriesHold = false;
    report(entry, std::move(what));
  });
  const auto& checkpoint = witness.checkpoint;
  if (checkpoint && checkpoint->size == 0) compareWithCheckpoint(tree, *checkpoint, report);
  while (const auto* entry = reading.next()) {
    signatures.told(entry->sequence, entry->kind, entry->facts, tree);
    tree.add(entry->leaf);
    if (checkpoint && checkpoint->size == tree.size()) compareWithCheckpoint(tree, *checkpoint, report);
    if (const auto kind = kinds.find(entry->kind); kind != kinds.end()) {
      kind->second.entry(entry->sequence, entry->facts);
    } else {
      report(entry->sequence, "the entry is of kind \"" + entry->kind + "\", which this program does not know");
    }
    status.told(entry->sequence, entry->kind, entry->facts);
    if (progress && tree.size() % 256 == 0 && !progress(reading.fraction())) {
      return refuse({.kind = ProblemKind::Cancelled});
    }
  }
  if (checkpoint && checkpoint->size > tree.size()) {
    report(static_cast<std::int64_t>(tree.size()),
           "the ledger ends after " + std::to_string(tree.size()) + " entries, the checkpoint counted " +
               std::to_string(checkpoint->size) + ": its tail is gone, or an older copy of the shop was put back");
  }
  for (auto& [name, kind] : kinds) kind.finish();
  if (entriesHold) comparison.finish();
  for (auto& fault : ofTree.faults) report(fault.entry, std::move(fault.what));
  signatures.finish(witness.key, result);
  status.compare(database, report);
  findLooseRows(database, report);
  result.entries = static_cast<std::int64_t>(tree.size());
  result.head = writeHash(tree.root());
  std::stable_sort(result.faults.begin(), result.faults.end(),
                   [](const Fault& a, const Fault& b) { return a.entry < b.entry; });
  return result;
}

Checkpoint headOf(Database& database, std::optional<std::uint64_t> size) {
  Statement leaves(database, "SELECT leaf FROM ledger ORDER BY seq");
  GrowingTree tree;
  leaves.run();
  while (!(size && tree.size() == *size) && leaves.next()) tree.add(asHash(leaves.bytes(0)));
  return {.size = tree.size(), .root = tree.root()};
}

}  // namespace steadyturn
