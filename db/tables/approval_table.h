// Who stands for a fastener's revision besides the one who entered it. Evidence: INSERT only.
#pragma once

#include "ledger.h"
#include "proven_rows.h"
#include "records.h"

namespace steadyturn {

class ApprovalTable {
 public:
  ApprovalTable(Database& database, Ledger& ledger) : database_(database), ledger_(ledger) {}
  // Ledger kind "fastener_approval". A revision is approved once (StoreError, Conflict).
  void add(const Fastener& fastener, const std::string& by, Date date, const EntryStamp& stamp);
  ProvenRows proven() const;  // for a proof

 private:
  Database& database_;
  Ledger& ledger_;
};

}  // namespace steadyturn
