// Papers that were handed out, known again by the hash of their bytes. Evidence: INSERT only.
#pragma once

#include <optional>
#include <vector>

#include "issued_report.h"
#include "ledger.h"
#include "proven_rows.h"

namespace steadyturn {

class IssueTable {
 public:
  IssueTable(Database& database, Ledger& ledger) : database_(database), ledger_(ledger) {}
  std::int64_t add(const IssuedReport& report, const EntryStamp& stamp);     // ledger kind "report"; its entry
  std::vector<IssuedReportEntry> withHash(const std::string& sha256) const;  // the oldest first
  // The last one of this sort that was handed out.
  std::optional<IssuedReportEntry> newest(const std::string& subject, const std::string& id,
                                          const std::string& file) const;
  ProvenRows proven() const;  // for a proof

 private:
  Database& database_;
  Ledger& ledger_;
};

}  // namespace steadyturn
