// Reference standards.
#pragma once

#include <optional>
#include <vector>

#include "ledger.h"
#include "proven_rows.h"
#include "records.h"

namespace steadyturn {

class ReferenceTable {
 public:
  ReferenceTable(Database& database, Ledger& ledger);
  void add(const Reference& reference, const EntryStamp& stamp);  // ledger kind "reference"
  std::optional<Reference> find(const std::string& id) const;
  std::vector<Reference> all() const;  // by id
  ProvenRows proven() const;           // for a proof

 private:
  Database& database_;
  Ledger& ledger_;
  Statement insert_;
};

}  // namespace steadyturn
