// Bench set-ups and the references' ranges. Evidence: INSERT only; a newer one takes an older one's place, both stay.
#pragma once

#include <optional>
#include <vector>

#include "bench_record.h"
#include "ledger.h"
#include "proven_rows.h"

namespace steadyturn {

class BenchSetupTable {
 public:
  BenchSetupTable(Database& database, Ledger& ledger);
  // Ledger kind "bench_setup"; returns the id it was given.
  std::int64_t add(const BenchSetup& setup, const EntryStamp& stamp);
  std::vector<BenchSetup> all() const;                            // the newest first, by date, then id
  std::vector<BenchSetup> ofModel(const ToolModel& model) const;  // likewise

  // Ledger kind "reference_range".
  void setRange(const std::string& reference, const ReferenceRange& range, const EntryStamp& stamp);
  std::optional<ReferenceRange> rangeOf(const std::string& reference) const;

  // For a proof.
  ProvenRows proven() const;
  ProvenRows provenRanges() const;

 private:
  Database& database_;
  Ledger& ledger_;
};

// What the ledger says of them.
Facts benchSetupFacts(const BenchSetup& setup, std::int64_t id);
Facts referenceRangeFacts(const std::string& reference, const ReferenceRange& range);

}  // namespace steadyturn
