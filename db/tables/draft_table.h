// What is being typed at the bench: a tool's check and its set-up, each replaced at every reading. Not evidence, so
// no ledger entry; yet on the disk, safe from a power cut, when the transaction's commit returns (synchronous =
// FULL).
#pragma once

#include <string>
#include <vector>

#include "database.h"
#include "statement.h"

namespace steadyturn {

enum class DraftOf { Check, Setup };

struct StoredDraft {
  std::string tool;
  DraftOf what = DraftOf::Check;
  std::string draft;    // the application layer's text
  std::string savedAt;  // UTC instant
};

class DraftTable {
 public:
  explicit DraftTable(Database& database);
  void save(const StoredDraft& draft);
  void remove(const std::string& tool, DraftOf what);  // nothing to remove is fine
  std::vector<StoredDraft> all(DraftOf what) const;    // the newest first

 private:
  Database& database_;
  Statement save_, remove_;
};

}  // namespace steadyturn
