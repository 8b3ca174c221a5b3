// Decisions about tightenings in doubt, and the closing of a recall. Evidence: INSERT only.
#pragma once

#include <optional>
#include <vector>

#include "ledger.h"
#include "proven_rows.h"
#include "recall_record.h"

namespace steadyturn {

class RecallTable {
 public:
  RecallTable(Database& database, Ledger& ledger) : database_(database), ledger_(ledger) {}
  // Ledger kind "recall_decision". A closed recall takes no more (StoreError).
  void add(const RecallDecision& decision, const EntryStamp& stamp);
  std::vector<RecallDecision> decisions(std::int64_t failedCheck) const;  // the newest of each tightening
  void close(const RecallClosing& closing, const EntryStamp& stamp);      // ledger kind "recall_closing"
  std::optional<RecallClosing> closing(std::int64_t failedCheck) const;
  ProvenRows provenDecisions() const;  // for a proof
  ProvenRows provenClosings() const;

 private:
  Database& database_;
  Ledger& ledger_;
};

}  // namespace steadyturn
