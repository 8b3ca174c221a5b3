// Tightenings: what was done to which fastener of which vehicle, with which tool. Evidence: INSERT only.
#pragma once

#include <functional>
#include <vector>

#include "ledger.h"
#include "proven_rows.h"
#include "records.h"

namespace steadyturn {

class TighteningTable {
 public:
  TighteningTable(Database& database, Ledger& ledger);
  // Ledger kind "tightening". The first tightening of a job opens it; a job is of one vehicle (StoreError, Conflict).
  std::int64_t add(const Tightening& tightening, const EntryStamp& stamp);
  bool exists(const Tightening& tightening) const;  // the same in every fact but the id
  std::vector<Tightening> all() const;              // by date, job, id
  std::vector<Tightening> ofTool(const std::string& tool, Date from, Date to) const;
  struct DayCount {
    Date date{};
    std::int64_t tightenings = 0;
  };
  std::vector<DayCount> countedByDay(const std::string& tool, Date to) const;  // rising
  std::vector<Tightening> ofJob(const std::string& job) const;
  // How many each tool did on each day up to `to`: tool by tool, days rising.
  void forEachDaysCount(
      Date to, const std::function<void(const std::string& tool, Date day, std::int64_t tightenings)>& visit) const;
  std::int64_t newestId() const;  // 0: none yet
  ProvenRows proven() const;      // for a proof

 private:
  void ensureJob(const std::string& job, const std::string& vehicle);

  Database& database_;
  Ledger& ledger_;
  Statement insert_;
  mutable Statement same_;
  // Remembered within one transaction.
  std::int64_t nextId_ = 0;
  std::uint64_t countedIn_ = 0;
  std::string lastJob_, lastVehicle_;
};

}  // namespace steadyturn
