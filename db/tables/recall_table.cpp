#include "recall_table.h"

#include <nlohmann/json.hpp>

#include "stored_values.h"

namespace steadyturn {

namespace {

constexpr const char* decisionColumns =
    "SELECT failed_check, tightening, action, reason, date, decided_by, entry FROM recall_decision d";
constexpr const char* closingColumns =
    "SELECT failed_check, tightenings, date, closed_by, note, entry FROM recall_closing";

RecallDecision decisionOf(const Statement& row) {
  const auto action = row.text(2);
  return {.failedCheck = row.integer(0),
          .tightening = row.integer(1),
          .action = stored(parseRecallAction(action), action),
          .reason = row.text(3),
          .date = storedDate(row.text(4)),
          .by = row.text(5)};
}

RecallClosing closingOf(const Statement& row) {
  return {.failedCheck = row.integer(0),
          .tightenings = storedInt(row, 1),
          .date = storedDate(row.text(2)),
          .by = row.text(3),
          .note = row.text(4)};
}

Facts decisionFacts(const RecallDecision& decision) {
  return {{"failed_check", decision.failedCheck},
          {"tightening", decision.tightening},
          {"action", writeRecallAction(decision.action)},
          {"reason", decision.reason},
          {"date", writeDate(decision.date)},
          {"by", decision.by}};
}

Facts closingFacts(const RecallClosing& closing) {
  return {{"failed_check", closing.failedCheck},
          {"tightenings", closing.tightenings},
          {"date", writeDate(closing.date)},
          {"by", closing.by},
          {"note", closing.note}};
}

}  // namespace

void RecallTable::add(const RecallDecision& decision, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "recall_decision", decisionFacts(decision));
  Statement(database_,
            "INSERT INTO recall_decision (entry, failed_check, tightening, action, reason, date, decided_by) VALUES "
            "(?, ?, ?, ?, ?, ?, ?)")
      .run(entry, decision.failedCheck, decision.tightening, writeRecallAction(decision.action), decision.reason,
           writeDate(decision.date), decision.by);
}

std::vector<RecallDecision> RecallTable::decisions(std::int64_t failedCheck) const {
  Statement query(database_, std::string(decisionColumns) +
                                 " WHERE failed_check = ? AND NOT EXISTS (SELECT 1 FROM recall_decision n WHERE "
                                 "n.failed_check = d.failed_check AND n.tightening = d.tightening AND n.entry > "
                                 "d.entry) ORDER BY tightening");
  query.run(failedCheck);
  std::vector<RecallDecision> decisions;
  while (query.next()) decisions.push_back(decisionOf(query));
  return decisions;
}

void RecallTable::close(const RecallClosing& closing, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "recall_closing", closingFacts(closing));
  Statement(
      database_,
      "INSERT INTO recall_closing (entry, failed_check, tightenings, date, closed_by, note) VALUES (?, ?, ?, ?, "
      "?, ?)")
      .run(entry, closing.failedCheck, closing.tightenings, writeDate(closing.date), closing.by, closing.note);
}

std::optional<RecallClosing> RecallTable::closing(std::int64_t failedCheck) const {
  Statement query(database_, std::string(closingColumns) + " WHERE failed_check = ?");
  return query.run(failedCheck).next() ? std::optional(closingOf(query)) : std::nullopt;
}

ProvenRows RecallTable::provenDecisions() const {
  const RecordKind kind{.kind = "recall_decision",
                        .name = {{"recall of check", "failed_check", 0}, {"tightening", "tightening", 1}}};
  return {database_, kind, std::string(decisionColumns) + " ORDER BY entry", 6,
          [](const Statement& row) { return ProvenFacts{.facts = decisionFacts(decisionOf(row))}; }};
}

ProvenRows RecallTable::provenClosings() const {
  const RecordKind kind{.kind = "recall_closing", .name = {{"closed recall of check", "failed_check", 0}}};
  return {database_, kind, std::string(closingColumns) + " ORDER BY entry", 5,
          [](const Statement& row) { return ProvenFacts{.facts = closingFacts(closingOf(row))}; }};
}

}  // namespace steadyturn
