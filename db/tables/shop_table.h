// The shop's own facts: its name, its policies, and which files were taken in already.
#pragma once

#include <map>
#include <optional>
#include <string>
#include <vector>

#include "ledger.h"
#include "proven_rows.h"

namespace steadyturn {

class ShopTable {
 public:
  ShopTable(Database& database, Ledger& ledger);
  std::optional<std::string> setting(const std::string& name) const;
  // Those of these names that were set.
  std::map<std::string, std::string> settings(const std::vector<std::string>& names) const;
  // Those whose name begins so, by what follows in it.
  std::map<std::string, std::string> settingsBelow(const std::string& prefix) const;
  void set(const std::string& name, const std::string& value, const EntryStamp& stamp);  // ledger kind "setting"
  // Files are recognised by the SHA-256 of their bytes (hex) and what they were imported as.
  bool fileWasImported(const std::string& kind, const std::string& sha256) const;
  void rememberFile(const std::string& kind, const std::string& sha256, std::int64_t rows,
                    const EntryStamp& stamp);  // "import"
  // For a proof.
  ProvenRows provenSettings() const;
  ProvenRows provenImports() const;

 private:
  Database& database_;
  Ledger& ledger_;
};

}  // namespace steadyturn
