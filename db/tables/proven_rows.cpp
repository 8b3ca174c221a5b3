#include "proven_rows.h"

#include <utility>

#include "store_error.h"

namespace steadyturn {

namespace {

void append(std::string& name, std::string_view word, const std::string& value) {
  if (!name.empty()) name += ' ';
  name.append(word).append(" ").append(value);
}

std::string nameOfRow(const RecordKind& kind, const Statement& row) {
  std::string name;
  for (const auto& part : kind.name) append(name, part.word, row.text(part.column));
  return name;
}

}  // namespace

std::string RecordKind::nameOf(const Facts& facts) const {
  std::string known;
  for (const auto& part : name) {
    const auto fact = facts.is_object() ? facts.find(part.fact) : facts.end();
    if (fact == facts.end()) continue;
    append(known, part.word, fact->is_string() ? fact->get<std::string>() : fact->dump());
  }
  return known.empty() ? std::string(kind) : known;
}

ProvenRows::ProvenRows(Database& database, RecordKind kind, std::string_view sql, int entryColumn, Make make)
    : kind_(std::move(kind)), rows_(database, sql), entryColumn_(entryColumn), make_(std::move(make)) {}

std::optional<ProvenRow> ProvenRows::next() {
  if (!std::exchange(running_, true)) rows_.run();
  if (!rows_.next()) return std::nullopt;
  ProvenRow row{.entry = rows_.integer(entryColumn_), .name = nameOfRow(kind_, rows_), .made = {}, .damage = {}};
  try {
    row.made = make_(rows_);
  } catch (const StoreError& error) {
    row.damage = error.problem().found;
  }
  return row;
}

}  // namespace steadyturn
