// Job sheets and the lists that services work down. Evidence: INSERT only.
#pragma once

#include <optional>
#include <vector>

#include "job_record.h"
#include "ledger.h"
#include "proven_rows.h"

namespace steadyturn {

class JobTable {
 public:
  JobTable(Database& database, Ledger& ledger);
  // Ledger kind "service". A later list takes the place of an earlier one of its name; both stay.
  void setService(const ServiceList& service, const EntryStamp& stamp);
  std::optional<ServiceList> service(const std::string& name) const;
  std::vector<ServiceList> services() const;  // newest lists, by name
  // Ledger kind "job". Opening makes the job; a job that is opened or closed twice is a StoreError (Conflict).
  void add(const JobEvent& event, const EntryStamp& stamp);
  std::optional<JobRecord> find(const std::string& id) const;
  std::vector<JobRecord> open() const;  // opened and not closed, the newest first
  ProvenRows proven() const;            // for a proof: the events
  ProvenRows provenServices() const;

 private:
  Database& database_;
  Ledger& ledger_;
};

}  // namespace steadyturn
