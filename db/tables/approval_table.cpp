#include "approval_table.h"

#include <nlohmann/json.hpp>

#include "stored_values.h"

namespace steadyturn {

namespace {

Facts approvalFacts(const std::string& fastener, int number, Date date, const std::string& by) {
  return {{"fastener", fastener}, {"number", number}, {"date", writeDate(date)}, {"approved_by", by}};
}

}  // namespace

void ApprovalTable::add(const Fastener& fastener, const std::string& by, Date date, const EntryStamp& stamp) {
  const auto entry =
      ledger_.append(stamp, "fastener_approval", approvalFacts(fastener.id, fastener.number, date, by));
  Statement(database_,
            "INSERT INTO fastener_approval (entry, fastener, number, date, approved_by) VALUES (?, ?, ?, ?, ?)")
      .run(entry, fastener.id, fastener.number, writeDate(date), by);
}

ProvenRows ApprovalTable::proven() const {
  const RecordKind kind{.kind = "fastener_approval",
                        .name = {{"approval of fastener", "fastener", 0}, {"revision", "number", 1}}};
  return {database_, kind, "SELECT fastener, number, date, approved_by, entry FROM fastener_approval ORDER BY entry",
          4, [](const Statement& row) {
            return ProvenFacts{
                .facts = approvalFacts(row.text(0), storedInt(row, 1), storedDate(row.text(2)), row.text(3))};
          }};
}

}  // namespace steadyturn
