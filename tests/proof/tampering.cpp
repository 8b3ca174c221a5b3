#include "tampering.h"

#include <algorithm>
#include <array>
#include <stdexcept>
#include <vector>

#include "rewritten_log.h"

namespace steadyturn {

struct Tampering::Table {
  const char* name;
  std::vector<const char*> keys;
  const char* record;  // SQL: how people name the record that a row is or belongs to
  const char* entry;   // SQL: that record's entry
  std::vector<const char*> dates;
  const char* nextKeys;  // SQL: keys for a copy of a row
};

namespace {

std::string quoted(const std::string& text) {
  std::string quoted = "'";
  for (const char c : text) quoted += c == '\'' ? "''" : std::string(1, c);
  return quoted + "'";
}

// Values that json_array takes, bytes among them.
std::string quotedAll(const std::string& columns) {
  std::string list;
  for (std::size_t begin = 0; begin < columns.size();) {
    const auto end = std::min(columns.find(", ", begin), columns.size());
    list += (list.empty() ? "quote(" : ", quote(") + columns.substr(begin, end - begin) + ")";
    begin = end + 2;
  }
  return list;
}

}  // namespace

const Tampering::Table& Tampering::anyTable() {
  static const std::vector<Table> tables{
      {"tool", {"id"}, "'tool ' || id", "entry", {}, "id || 'x'"},
      {"tool_status_event", {"entry"}, "'tool ' || tool || ' status'", "entry", {"date"}, "entry + 100000"},
      {"reference_standard", {"id"}, "'reference ' || id", "entry", {"calibrated", "due"}, "id || 'x'"},
      {"fastener_revision", {"id"}, "'fastener ' || fastener", "entry", {}, "id + 100000"},
      {"check_record", {"id"}, "'check ' || id", "entry", {"date"}, "id + 100000"},
      {"check_point",
       {"check_id", "position"},
       "'check ' || check_id",
       "(SELECT entry FROM check_record WHERE id = check_id)",
       {},
       "check_id, position + 100"},
      {"job",
       {"id"},
       "COALESCE('tightening ' || (SELECT MIN(t.id) FROM tightening t WHERE t.job = job.id), 'job ' || id)",
       "COALESCE((SELECT MIN(t.entry) FROM tightening t WHERE t.job = job.id), "
       "(SELECT MIN(e.entry) FROM job_event e WHERE e.job = job.id))",
       {},
       "id || 'x'"},
      {"tightening", {"id"}, "'tightening ' || id", "entry", {"date"}, "id + 100000"},
      {"fastener_approval", {"entry"}, "'approval of fastener ' || fastener", "entry", {"date"}, "entry + 100000"},
      {"job_event", {"entry"}, "'job ' || job", "entry", {"date"}, "entry + 100000"},
      {"service_list", {"entry"}, "'service ' || name", "entry", {}, "entry + 100000"},
      {"reference_range", {"entry"}, "'range of reference ' || reference", "entry", {}, "entry + 100000"},
      {"bench_setup", {"id"}, "'bench set-up ' || id", "entry", {"date"}, "id + 100000"},
      {"imported_file", {"kind", "sha256"}, "'import of ' || kind", "entry", {}, "kind || 'x', sha256"},
      {"signing_key", {"entry"}, "'signing key ' || id", "entry", {"made_at"}, "entry + 100000"},
      {"signed_checkpoint", {"entry"}, "'signed checkpoint of ' || size", "entry", {"at"}, "entry + 100000"},
      {"issued_report", {"entry"}, "'issued ' || subject || ' of ' || subject_id", "entry", {}, "entry + 100000"},
      {"tree_node",
       {"level", "position"},
       "'hash of entries ' || ((position << level) + 1) || ' to ' || ((position + 1) << level)",
       "(position + 1) << level",
       {},
       "level, position + 1000"},
      {"shop_setting", {"name"}, "'setting ' || name", "entry", {}, "name || 'x'"},
      {"ledger", {"seq"}, "'entry ' || seq", "seq", {"at"}, "(SELECT MAX(seq) + 1 FROM ledger)"}};
  return tables[below(tables.size())];
}

Tampering::Row Tampering::anyRow(const Table& table) {
  std::string keys;
  for (const auto* key : table.keys) keys += std::string("quote(") + key + "), ";
  const auto count = shop_.integer(std::string("SELECT COUNT(*) FROM ") + table.name);
  const auto cells = shop_.row("SELECT " + keys + table.record + ", " + table.entry + " FROM " + table.name +
                               " LIMIT 1 OFFSET " + std::to_string(below(static_cast<std::size_t>(count))));
  Row row{.table = &table, .where = "1", .record = *cells[cells.size() - 2], .entry = std::stoll(*cells.back())};
  for (std::size_t i = 0; i < table.keys.size(); ++i)
    row.where += std::string(" AND ") + table.keys[i] + " = " + *cells[i];
  return row;
}

std::string Tampering::anyColumn(const Table& table) {
  const auto columns = shop_.column(std::string("SELECT name FROM pragma_table_info('") + table.name + "')");
  return columns[below(columns.size())];
}

// Another value of the same sort: one byte of a text or of bytes, the next number.
std::string Tampering::changed(const Row& row, const std::string& column) {
  const auto cells = shop_.row("SELECT typeof(" + column + "), hex(" + column + "), quote(" + column + ") FROM " +
                               row.table->name + " WHERE " + row.where);
  const auto& sort = *cells[0];
  auto hex = *cells[1];
  if (sort == "null") {
    const auto declared = shop_.text(std::string("SELECT type FROM pragma_table_info('") + row.table->name +
                                     "') WHERE name = " + quoted(column));
    return declared == "TEXT" ? "'x'" : "1";
  }
  if (sort == "integer") return *cells[2] + " + 1";
  if (sort == "real") return "CAST(" + *cells[2] + " * 1.0000000000001 + 1e-13 AS REAL)";
  if (hex.empty()) return "'x'";
  // A letter or digit for a byte: the text stays text.
  static constexpr std::string_view others = "0123456789abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ";
  const auto at = 2 * below(hex.size() / 2);
  const auto old = std::stoi(hex.substr(at, 2), nullptr, 16);
  char other = others[below(others.size())];
  if (other == static_cast<char>(old)) other = other == 'q' ? 'Q' : 'q';
  static constexpr std::string_view digits = "0123456789ABCDEF";
  hex[at] = digits[static_cast<unsigned char>(other) >> 4];
  hex[at + 1] = digits[static_cast<unsigned char>(other) & 15];
  const auto bytes = "x'" + hex + "'";
  return sort == "blob" ? bytes : "CAST(" + bytes + " AS TEXT)";
}

Done Tampering::done(const std::string& what, const Row& row) const {
  return {.what = what + " of " + row.table->name + " WHERE " + row.where, .record = row.record, .entry = row.entry};
}

std::optional<Done> Tampering::changeCell() {
  const auto row = anyRow(anyTable());
  const auto column = anyColumn(*row.table);
  const auto value = changed(row, column);
  if (!shop_.run(std::string("UPDATE ") + row.table->name + " SET " + column + " = " + value + " WHERE " + row.where))
    return std::nullopt;
  return done("cell " + column + " := " + value, row);
}

std::optional<Done> Tampering::removeRow() {
  const auto row = anyRow(anyTable());
  if (!shop_.run(std::string("DELETE FROM ") + row.table->name + " WHERE " + row.where)) return std::nullopt;
  return done("row removed", row);
}

std::optional<Done> Tampering::swapCells() {
  const auto& table = anyTable();
  const auto one = anyRow(table), other = anyRow(table);
  const auto column = anyColumn(table);
  const auto value = [&](const Row& row) {
    return shop_.text("SELECT quote(" + column + ") FROM " + table.name + " WHERE " + row.where);
  };
  const auto first = value(one), second = value(other);
  const bool isKey = std::ranges::find(table.keys, column) != table.keys.end();
  if (first == second || isKey) return std::nullopt;
  const auto set = [&](const Row& row, const std::string& to) {
    return shop_.run(std::string("UPDATE ") + table.name + " SET " + column + " = " + to + " WHERE " + row.where);
  };
  shop_.run("SAVEPOINT swap");
  if (!set(one, second) || !set(other, first)) {
    shop_.run("ROLLBACK TO swap");
    shop_.run("RELEASE swap");
    return std::nullopt;
  }
  shop_.run("RELEASE swap");
  return done("cells " + column + " swapped with " + other.record, one);
}

std::optional<Done> Tampering::insertRow() {
  const auto row = anyRow(anyTable());
  const auto& table = *row.table;
  std::string columns;
  for (const auto& column : shop_.column(std::string("SELECT name FROM pragma_table_info('") + table.name + "')")) {
    const bool isKey = std::ranges::find(table.keys, column) != table.keys.end();
    const bool isNumber = column == "number";  // of a fastener's revision: unique with the fastener
    if (!isKey) columns += ", " + column + (isNumber ? " + 1" : "");
  }
  // The keys stand first in every table here.
  if (!shop_.run(std::string("INSERT INTO ") + table.name + " SELECT " + table.nextKeys + columns + " FROM " +
                 table.name + " WHERE " + row.where))
    return std::nullopt;
  auto inserted = done("row copied", row);
  const std::string name = table.name;
  if (name == "tree_node")
    inserted = {.what = inserted.what, .record = "the ledger's tree keeps a hash", .entry = -1};
  if (name == "job") inserted = {.what = inserted.what, .record = "job", .entry = -1};
  if (name == "tool_status_event" || name == "ledger") inserted.entry = shop_.integer("SELECT MAX(seq) FROM ledger");
  return inserted;
}

std::optional<Done> Tampering::cutTail() {
  const auto last = shop_.integer("SELECT MAX(seq) FROM ledger");
  const auto kept = last - 1 - static_cast<std::int64_t>(below(50));
  if (!shop_.run("DELETE FROM ledger WHERE seq > " + std::to_string(kept))) return std::nullopt;
  return Done{.what = "tail cut after " + std::to_string(kept), .record = "no record", .entry = last};
}

std::optional<Done> Tampering::shiftDate() {
  const auto& table = anyTable();
  if (table.dates.empty()) return std::nullopt;
  const auto row = anyRow(table);
  const std::string column = table.dates[below(table.dates.size())];
  const auto shifted = "date(substr(" + column + ", 1, 10), '+1 day') || substr(" + column + ", 11)";
  if (shop_.text("SELECT " + column + " FROM " + table.name + " WHERE " + row.where).empty()) return std::nullopt;
  if (!shop_.run(std::string("UPDATE ") + table.name + " SET " + column + " = " + shifted + " WHERE " + row.where))
    return std::nullopt;
  return done("date " + column + " shifted", row);
}

std::optional<Done> Tampering::swapEntries() {
  const auto last = shop_.integer("SELECT MAX(seq) FROM ledger");
  const auto one = 1 + static_cast<std::int64_t>(below(static_cast<std::size_t>(last)));
  const auto other = 1 + static_cast<std::int64_t>(below(static_cast<std::size_t>(last)));
  if (one == other) return std::nullopt;
  const auto move = [&](std::int64_t from, std::int64_t to) {
    shop_.run("UPDATE ledger SET seq = " + std::to_string(to) + " WHERE seq = " + std::to_string(from));
  };
  move(one, -1);
  move(other, one);
  move(-1, other);
  return Done{.what = "entries swapped with " + std::to_string(other), .record = "entry", .entry = one};
}

// What two rows say, exchanged, but for the keys that tell them apart.
std::optional<Done> Tampering::swapRows() {
  const auto& table = anyTable();
  const auto one = anyRow(table), other = anyRow(table);
  std::string columns;
  for (const auto& column : shop_.column(std::string("SELECT name FROM pragma_table_info('") + table.name + "')")) {
    if (std::ranges::find(table.keys, column) == table.keys.end()) columns += (columns.empty() ? "" : ", ") + column;
  }
  const std::string name = table.name;
  const auto differ = shop_.text("SELECT (SELECT json_array(" + quotedAll(columns) + ") FROM " + name + " WHERE " +
                                 one.where + ") IS NOT (SELECT json_array(" + quotedAll(columns) + ") FROM " + name +
                                 " WHERE " + other.where + ")");
  if (differ != "1") return std::nullopt;
  const auto done = [&] {
    return shop_.run("CREATE TEMP TABLE held AS SELECT * FROM " + name + " WHERE " + one.where) &&
           shop_.run("UPDATE " + name + " SET (" + columns + ") = (SELECT " + columns + " FROM " + name + " WHERE " +
                     other.where + ") WHERE " + one.where) &&
           shop_.run("UPDATE " + name + " SET (" + columns + ") = (SELECT " + columns + " FROM held) WHERE " +
                     other.where);
  };
  shop_.run("SAVEPOINT rows");
  const bool took = done();
  if (!took) shop_.run("ROLLBACK TO rows");
  shop_.run("RELEASE rows");
  shop_.run("DROP TABLE IF EXISTS temp.held");
  if (!took) return std::nullopt;
  return this->done("row swapped with " + other.where, one);
}

// The last papers and everything that tells of them: what is left is a shop of a moment before.
std::optional<Done> Tampering::cutTailWithRecords() {
  const auto last = shop_.integer("SELECT MAX(seq) FROM ledger");
  const auto kept = last - 1 - static_cast<std::int64_t>(below(static_cast<std::size_t>(last - signedTo_ - 1)));
  const auto beyond = " > " + std::to_string(kept);
  shop_.run("DELETE FROM issued_report WHERE entry" + beyond);
  shop_.run("DELETE FROM ledger WHERE seq" + beyond);
  shop_.run("DELETE FROM tree_node WHERE ((position + 1) << level)" + beyond);
  return Done{.what = "tail cut after " + std::to_string(kept) + " with its records",
              .record = "no record",
              .entry = kept,
              .seen = Seen::WithACheckpoint};
}

// A record changed, its entry written to fit, and all hashes made anew: nothing in the file speaks against it but
// what was signed.
std::optional<Done> Tampering::rebuildLog() {
  struct Way {
    const char *table, *column, *fact;
  };
  static constexpr std::array ways{Way{"tightening", "date", "date"}, Way{"tightening", "setting", "setting"},
                                   Way{"tightening", "done_by", "by"}, Way{"check_record", "date", "date"},
                                   Way{"check_record", "checked_by", "by"}};
  const auto& [table, column, fact] = ways[below(ways.size())];
  const std::string name = table, field = column;
  const auto count = shop_.integer("SELECT COUNT(*) FROM " + name);
  const auto row = shop_.row("SELECT id, entry, " + field + " FROM " + name + " LIMIT 1 OFFSET " +
                             std::to_string(below(static_cast<std::size_t>(count))));
  const auto old = row[2].value_or("");
  const std::string is = field == "date" ? "2019-01-01" : field == "setting" ? old + "0" : old + " jr";
  const auto marked = [&](const std::string& value) {
    return quoted("\"" + std::string(fact) + "\":\"" + value + "\"");
  };
  const auto took = shop_.run("UPDATE " + name + " SET " + field + " = " + quoted(is) + " WHERE id = " + *row[0]) &&
                    shop_.run("UPDATE ledger SET entry = CAST(replace(CAST(entry AS TEXT), " + marked(old) + ", " +
                              marked(is) + ") AS BLOB) WHERE seq = " + *row[1]);
  if (!took) return std::nullopt;
  makeConsistent(shop_);
  const auto covering = shop_.integer(
      "SELECT MIN(entry) FROM (SELECT entry FROM signing_key UNION SELECT entry FROM signed_checkpoint) WHERE entry "
      "> " +
      *row[1]);
  return Done{.what = "log rebuilt with another " + field + " of " + name + " " + *row[0],
              .record = "no record",
              .entry = covering};
}

Done Tampering::once() {
  constexpr std::array ways{&Tampering::changeCell,  &Tampering::changeCell,         &Tampering::removeRow,
                            &Tampering::swapCells,   &Tampering::swapRows,           &Tampering::insertRow,
                            &Tampering::cutTail,     &Tampering::cutTailWithRecords, &Tampering::shiftDate,
                            &Tampering::swapEntries, &Tampering::rebuildLog};
  for (int tries = 0; tries < 100; ++tries) {
    if (auto made = (this->*ways[below(ways.size())])()) return *made;
  }
  throw std::runtime_error("no change took");
}

}  // namespace steadyturn
