#include "issue_table.h"

#include <nlohmann/json.hpp>

namespace steadyturn {

namespace {

constexpr const char* reportColumns = "SELECT r.subject, r.subject_id, r.file, r.sha256, r.size, r.entry";

Facts reportFacts(const IssuedReport& report) {
  return {{"subject", report.subject},
          {"id", report.id},
          {"file", report.file},
          {"sha256", report.sha256},
          {"size", report.size}};
}

IssuedReport reportOf(const Statement& row) {
  return {
      .subject = row.text(0), .id = row.text(1), .file = row.text(2), .sha256 = row.text(3), .size = row.integer(4)};
}

IssuedReportEntry entryOf(const Statement& row) {
  return {.report = reportOf(row), .entry = row.integer(5), .at = row.text(6), .who = row.text(7)};
}

constexpr const char* withLedger = ", l.at, l.who FROM issued_report r JOIN ledger l ON l.seq = r.entry";

}  // namespace

std::int64_t IssueTable::add(const IssuedReport& report, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "report", reportFacts(report));
  Statement(database_,
            "INSERT INTO issued_report (entry, subject, subject_id, file, sha256, size) VALUES (?, ?, ?, ?, ?, ?)")
      .run(entry, report.subject, report.id, report.file, report.sha256, report.size);
  return entry;
}

std::vector<IssuedReportEntry> IssueTable::withHash(const std::string& sha256) const {
  Statement rows(database_, std::string(reportColumns) + withLedger + " WHERE r.sha256 = ? ORDER BY r.entry");
  std::vector<IssuedReportEntry> found;
  rows.run(sha256);
  while (rows.next()) found.push_back(entryOf(rows));
  return found;
}

std::optional<IssuedReportEntry> IssueTable::newest(const std::string& subject, const std::string& id,
                                                    const std::string& file) const {
  Statement rows(database_,
                 std::string(reportColumns) + withLedger +
                     " WHERE r.subject = ? AND r.subject_id = ? AND r.file = ? ORDER BY r.entry DESC LIMIT 1");
  return rows.run(subject, id, file).next() ? std::optional(entryOf(rows)) : std::nullopt;
}

ProvenRows IssueTable::proven() const {
  const RecordKind kind{.kind = "report", .name = {{"issued", "subject", 0}, {"of", "id", 1}}};
  return {database_, kind, std::string(reportColumns) + " FROM issued_report r ORDER BY r.entry", 5,
          [](const Statement& row) { return ProvenFacts{.facts = reportFacts(reportOf(row))}; }};
}

}  // namespace steadyturn
