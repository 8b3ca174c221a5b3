// Tightenings: what was done to which fastener of which vehicle, with which tool. Evidence: INSERT only.
#pragma once

#include <vector>

#include "ledger.h"
#include "records.h"

namespace steadyturn {

class TighteningTable {
 public:
  TighteningTable(Database& database, Ledger& ledger);
  std::int64_t add(const Tightening& tightening, const EntryStamp& stamp);  // ledger kind "tightening"
  bool exists(const Tightening& tightening) const;                          // the same in every fact but the id
  std::vector<Tightening> all() const;  // by date, job, id
  std::vector<Tightening> ofTool(const std::string& tool, Date from, Date to) const;
  std::vector<Tightening> ofJob(const std::string& job) const;
};

}  // namespace steadyturn
