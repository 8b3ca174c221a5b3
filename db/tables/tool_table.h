// Tools and their status. Facts of a tool are added once; its status changes are events that are kept.
#pragma once

#include <optional>
#include <vector>

#include "ledger.h"
#include "proven_rows.h"
#include "records.h"

namespace steadyturn {

struct DatedStatus {
  Date date{};
  ToolStatus status = ToolStatus::InService;
  std::string reason;
};

class ToolTable {
 public:
  ToolTable(Database& database, Ledger& ledger);
  // REQUIRES: the id is not taken (the caller asked find()). Ledger kind "tool".
  void add(const Tool& tool, const EntryStamp& stamp);
  std::optional<Tool> find(const std::string& id) const;
  std::vector<Tool> all() const;  // by id, in byte order
  std::size_t count() const;
  // Appends a status event (ledger kind "tool_status") and makes it the tool's present status.
  void setStatus(const std::string& id, ToolStatus status, const std::string& reason, Date date,
                 const EntryStamp& stamp);
  std::vector<DatedStatus> statusEvents(const std::string& id) const;  // oldest first
  // For a proof. A tool's row shows its present status, which its events tell.
  ProvenRows proven(Assay<Tool> assay = {}) const;
  ProvenRows provenStatus() const;

 private:
  Database& database_;
  Ledger& ledger_;
  Statement insert_;
};

}  // namespace steadyturn
