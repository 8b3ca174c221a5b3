// Checks being typed: one a tool, replaced at every reading. Not evidence, so no ledger entry; yet on the disk, safe
// from a power cut, when the transaction's commit returns (synchronous = FULL).
#pragma once

#include <string>
#include <vector>

#include "database.h"
#include "statement.h"

namespace steadyturn {

struct StoredDraft {
  std::string tool;
  std::string draft;    // the application layer's text
  std::string savedAt;  // UTC instant
};

class DraftTable {
 public:
  explicit DraftTable(Database& database);
  void save(const StoredDraft& draft);
  void remove(const std::string& tool);  // nothing to remove is fine
  std::vector<StoredDraft> all() const;  // the newest first

 private:
  Database& database_;
  Statement save_, remove_;
};

}  // namespace steadyturn
