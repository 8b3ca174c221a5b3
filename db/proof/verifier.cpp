#include "verifier.h"

#include <algorithm>
#include <memory>
#include <nlohmann/json.hpp>

#include "differences.h"
#include "entry_reading.h"
#include "loose_rows.h"
#include "present_status.h"
#include "record_match.h"

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

Result<Verification> verifyLedger(Database& database, std::vector<ProvenRows> records,
                                  const std::optional<Checkpoint>& checkpoint,
                                  const std::function<bool(double)>& progress) {
  Verification result;
  const ReportFault report = FaultList(result);
  std::map<std::string, RecordMatch, std::less<>> kinds;
  for (auto& rows : records) {
    std::string kind(rows.kind().kind);
    kinds.try_emplace(std::move(kind), std::move(rows), report);
  }
  GrowingTree tree;
  PresentStatus status;
  EntryReading reading(database, report);
  if (checkpoint && checkpoint->size == 0) compareWithCheckpoint(tree, *checkpoint, report);
  while (const auto* entry = reading.next()) {
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
  status.compare(database, report);
  findLooseRows(database, report);
  result.entries = static_cast<std::int64_t>(tree.size());
  result.head = writeHash(tree.root());
  std::stable_sort(result.faults.begin(), result.faults.end(),
                   [](const Fault& a, const Fault& b) { return a.entry < b.entry; });
  return result;
}

std::vector<Hash> storedLeaves(Database& database) {
  Statement rows(database, "SELECT leaf FROM ledger ORDER BY seq");
  std::vector<Hash> leaves;
  rows.run();
  while (rows.next()) leaves.push_back(asHash(rows.bytes(0)));
  return leaves;
}

Checkpoint headOf(Database& database, std::optional<std::uint64_t> size) {
  Statement leaves(database, "SELECT leaf FROM ledger ORDER BY seq");
  GrowingTree tree;
  leaves.run();
  while (!(size && tree.size() == *size) && leaves.next()) tree.add(asHash(leaves.bytes(0)));
  return {.size = tree.size(), .root = tree.root()};
}

}  // namespace steadyturn
