// Records as a proof reads them: one by one in the order of their ledger entries, each with the facts that its entry
// must hold, made anew from the columns people read by the very functions that made them when it was written.
#pragma once

#include <functional>
#include <nlohmann/json.hpp>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "ledger.h"
#include "statement.h"

namespace steadyturn {

// How records of one kind are told apart: "fastener F-07 revision 2".
struct NamePart {
  std::string_view word, fact;
  int column;  // of the row, with the same value as the fact
};

struct RecordKind {
  std::string_view kind;  // as the ledger has it
  std::vector<NamePart> name;
  std::vector<std::string_view> changing{};  // facts that later entries change: the row shows them as they are now
  bool replaced = false;                     // a row shows the newest entry of its name alone

  std::string nameOf(const Facts& facts) const;
};

struct ProvenFacts {
  Facts facts;
  // Asked of a record that is as its entry has it: what is wrong with it all the same; empty when nothing is.
  std::function<std::string()> assay{};
  std::optional<std::int64_t> place{};  // where the store counts such records from 1 by their entries
};

struct ProvenRow {
  std::int64_t entry = 0;  // the one it names
  std::string name;
  ProvenFacts made;
  std::string damage;  // what no record ever holds, where the facts could not be made; else empty
};

// What a record is asked beyond being as it was written; an empty answer is a good one.
template <typename Record>
using Assay = std::function<std::string(const Record&)>;

class ProvenRows {
 public:
  using Make = std::function<ProvenFacts(const Statement&)>;
  // `sql` gives the rows in the order of column `entryColumn`. `make` may throw StoreError for damage.
  ProvenRows(Database& database, RecordKind kind, std::string_view sql, int entryColumn, Make make);
  const RecordKind& kind() const { return kind_; }
  std::optional<ProvenRow> next();

 private:
  RecordKind kind_;
  Statement rows_;
  int entryColumn_;
  Make make_;
  bool running_ = false;
};

// The facts of `record` with its assay, if there is one.
template <typename Record>
ProvenFacts withAssay(Facts facts, Record record, const Assay<Record>& assay) {
  if (!assay) return {.facts = std::move(facts)};
  return {.facts = std::move(facts), .assay = [record = std::move(record), assay] { return assay(record); }};
}

}  // namespace steadyturn
