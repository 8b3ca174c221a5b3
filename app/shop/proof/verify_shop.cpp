#include <map>

#include "check_again.h"
#include "inside.h"
#include "shop_proof.h"
#include "snapshot.h"
#include "verifier.h"

namespace steadyturn {

Result<Verification> verifyShop(const Shop& shop, const std::optional<Checkpoint>& checkpoint,
                                const Progress& progress, const std::string& trustedKey) {
  Witness witness{.checkpoint = checkpoint, .key = {}};
  if (!trustedKey.empty()) {
    const auto key = parseHash(trustedKey);  // a public key has as many digits
    if (!key) {
      return refuse({.field = "key", .found = trustedKey, .accepted = "a public key: 64 hexadecimal digits"});
    }
    witness.key = writeHash(*key);
  }
  return guarded([&]() -> Result<Verification> {
    auto& inside = shop.inside();
    const Snapshot snapshot(inside.database);
    // Tools found to be as their entries have them: a check is held against nothing less. They come before their
    // checks.
    std::map<std::string, Tool> proven;
    const Assay<Tool> keep = [&](const Tool& tool) {
      proven.insert_or_assign(tool.id, tool);
      return std::string();
    };
    const Assay<Check> checkAgain = [&](const Check& check) {
      const auto tool = proven.find(check.tool);
      return tool == proven.end() ? std::string() : differenceOnCheckingAgain(check, tool->second);
    };
    std::vector<ProvenRows> records;
    records.push_back(inside.facts.provenSettings());
    records.push_back(inside.facts.provenImports());
    records.push_back(inside.tools.proven(keep));
    records.push_back(inside.tools.provenStatus());
    records.push_back(inside.references.proven());
    records.push_back(inside.fasteners.proven());
    records.push_back(inside.approvals.proven());
    records.push_back(inside.checks.proven(checkAgain));
    records.push_back(inside.tightenings.proven());
    records.push_back(inside.jobs.proven());
    records.push_back(inside.jobs.provenServices());
    records.push_back(inside.recalls.provenDecisions());
    records.push_back(inside.recalls.provenClosings());
    records.push_back(inside.bench.proven());
    records.push_back(inside.bench.provenRanges());
    records.push_back(inside.signing.provenKeys());
    records.push_back(inside.signing.provenCheckpoints());
    records.push_back(inside.issued.proven());
    records.push_back(inside.accounts.proven());
    auto verification = verifyLedger(inside.database, std::move(records), witness, progress);
    if (!inside.database.disturbed()) return verification;
    // Read without locks, so what was read may be of two moments: no ground for a verdict.
    return refuse({.kind = ProblemKind::Unavailable,
                   .field = "shop",
                   .found = shop.address(),
                   .accepted = "a shop at rest; somebody wrote to it meanwhile: open it again"});
  });
}

Result<Checkpoint> ledgerHead(const Shop& shop) {
  return guarded([&]() -> Result<Checkpoint> {
    auto& inside = shop.inside();
    const Snapshot snapshot(inside.database);
    const auto size = static_cast<std::uint64_t>(inside.ledger.size());
    return Checkpoint{.size = size, .root = ledgerRoot(inside.database, size)};
  });
}

}  // namespace steadyturn
