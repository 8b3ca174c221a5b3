#include "shop_table.h"

#include <nlohmann/json.hpp>

namespace steadyturn {

namespace {

Facts settingFacts(const std::string& name, const std::string& value) { return {{"name", name}, {"value", value}}; }

Facts importFacts(const std::string& kind, const std::string& sha256, std::int64_t rows) {
  return {{"kind", kind}, {"sha256", sha256}, {"rows", rows}};
}

}  // namespace

ShopTable::ShopTable(Database& database, Ledger& ledger) : database_(database), ledger_(ledger) {}

std::optional<std::string> ShopTable::setting(const std::string& name) const {
  Statement query(database_, "SELECT value FROM shop_setting WHERE name = ?");
  return query.run(name).next() ? std::optional(query.text(0)) : std::nullopt;
}

std::map<std::string, std::string> ShopTable::settingsBelow(const std::string& prefix) const {
  Statement query(database_, "SELECT name, value FROM shop_setting WHERE substr(name, 1, ?) = ?");
  query.run(static_cast<std::int64_t>(prefix.size()), prefix);
  std::map<std::string, std::string> below;
  while (query.next()) below.emplace(query.text(0).substr(prefix.size()), query.text(1));
  return below;
}

std::map<std::string, std::string> ShopTable::settings(const std::vector<std::string>& names) const {
  std::string marks;
  QVariantList values;
  for (const auto& name : names) {
    marks += marks.empty() ? "?" : ", ?";
    values << boundValue(name);
  }
  Statement query(database_, "SELECT name, value FROM shop_setting WHERE name IN (" + marks + ")");
  query.runBound(values);
  std::map<std::string, std::string> found;
  while (query.next()) found.emplace(query.text(0), query.text(1));
  return found;
}

void ShopTable::set(const std::string& name, const std::string& value, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "setting", settingFacts(name, value));
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
  const auto entry = ledger_.append(stamp, "import", importFacts(kind, sha256, rows));
  Statement(database_, "INSERT INTO imported_file (kind, sha256, row_count, entry) VALUES (?, ?, ?, ?)")
      .run(kind, sha256, rows, entry);
}

ProvenRows ShopTable::provenSettings() const {
  const RecordKind kind{.kind = "setting", .name = {{"setting", "name", 0}}, .replaced = true};
  return {database_, kind, "SELECT name, value, entry FROM shop_setting ORDER BY entry, name", 2,
          [](const Statement& row) { return ProvenFacts{.facts = settingFacts(row.text(0), row.text(1))}; }};
}

ProvenRows ShopTable::provenImports() const {
  const RecordKind kind{.kind = "import", .name = {{"import of", "kind", 0}, {"file", "sha256", 1}}};
  return {database_, kind, "SELECT kind, sha256, row_count, entry FROM imported_file ORDER BY entry", 3,
          [](const Statement& row) {
            return ProvenFacts{.facts = importFacts(row.text(0), row.text(1), row.integer(2))};
          }};
}

}  // namespace steadyturn
