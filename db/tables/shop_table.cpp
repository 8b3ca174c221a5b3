#include "shop_table.h"

#include <nlohmann/json.hpp>

namespace steadyturn {

ShopTable::ShopTable(Database& database, Ledger& ledger) : database_(database), ledger_(ledger) {}

std::optional<std::string> ShopTable::setting(const std::string& name) const {
  Statement query(database_, "SELECT value FROM shop_setting WHERE name = ?");
  return query.run(name).next() ? std::optional(query.text(0)) : std::nullopt;
}

void ShopTable::set(const std::string& name, const std::string& value, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "setting", {{"name", name}, {"value", value}});
  Statement(database_,
            "INSERT INTO shop_setting (name, value, entry) VALUES (?, ?, ?) "
            "ON CONFLICT (name) DO UPDATE SET value = excluded.value, entry = excluded.entry")
      .run(name, value, entry);
}

bool ShopTable::fileWasImported(const std::string& kind, const std::string& sha256) const {
  return Statement(database_, "SELECT 1 FROM imported_file WHERE kind = ? AND sha256 = ?").run(kind, sha256).next();
}

void ShopTable::rememberFile(const std::string& kind, const std::string& sha256, std::int64_t rows,
                             const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "import", {{"kind", kind}, {"sha256", sha256}, {"rows", rows}});
  Statement(database_, "INSERT INTO imported_file (kind, sha256, row_count, entry) VALUES (?, ?, ?, ?)")
      .run(kind, sha256, rows, entry);
}

}  // namespace steadyturn
