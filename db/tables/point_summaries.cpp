// Set-point summaries: the reading that grows with the shop, so nothing is asked for or converted twice.
#include "check_table.h"
#include "stored_values.h"

namespace steadyturn {

namespace {

// The phases' codes sort as found before as left. The index on (tool, date, phase, id) and the points' key give the
// order, so one tool's rows lie side by side however large the shop is. What is the check's own comes with its first
// point only: a column that says nothing costs nothing.
std::string summaryQuery(const char* where) {
  return std::string(
             "SELECT r.id, p.target, p.unit, p.reading_count, p.mean_deviation, p.repeatability, "
             "p.standard_uncertainty, "
             "p.verdict, CASE p.position WHEN 0 THEN r.tool END, CASE p.position WHEN 0 THEN r.date END, "
             "CASE p.position WHEN 0 THEN r.phase END, "
             "CASE p.position WHEN 0 THEN r.reference_expanded_percent / r.reference_coverage_factor END, "
             "CASE p.position WHEN 0 THEN r.direction END "
             "FROM check_record r JOIN check_point p ON p.check_id = r.id "
             "WHERE NOT EXISTS (SELECT 1 FROM check_record c WHERE c.corrects = r.id)") +
         where + " ORDER BY r.tool, r.date, r.phase, r.id, p.position";
}

// The check's own facts are read at its first point and handed on.
void readCheckFacts(const Statement& row, PointSummary& summary) {
  summary.check = row.integer(0);
  if (const auto tool = row.text(8); tool != summary.tool) summary.tool = tool;
  summary.date = storedDate(row.text(9));
  const auto phase = row.text(10);
  summary.phase = stored(parsePhase(phase), phase);
  summary.referenceStandardUncertainty = row.real(11);
  const auto direction = row.text(12);
  summary.direction = stored(parseDirection(direction), direction);
}

template <typename Visit>
void visitSummaries(Statement& query, Visit&& visit) {
  PointSummary summary;
  while (query.next()) {
    if (query.integer(0) != summary.check) readCheckFacts(query, summary);
    summary.target = {query.real(1), storedUnit(query.text(2))};
    summary.readings = static_cast<int>(query.integer(3));
    summary.meanDeviation = query.real(4);
    summary.repeatability = query.optionalReal(5);
    summary.standardUncertainty = query.real(6);
    const auto verdict = query.text(7);
    summary.verdict = stored(parseVerdict(verdict), verdict);
    visit(summary);
  }
}

std::vector<PointSummary> summariesOf(Statement& query) {
  std::vector<PointSummary> summaries;
  visitSummaries(query, [&](const PointSummary& summary) { summaries.push_back(summary); });
  return summaries;
}

}  // namespace

std::vector<CheckTable::ReferenceUse> CheckTable::referencesOf(const std::string& tool) const {
  Statement query(database_,
                  "SELECT r.date, r.reference FROM check_record r WHERE r.tool = ? AND NOT EXISTS (SELECT 1 FROM "
                  "check_record c WHERE c.corrects = r.id) ORDER BY r.date, r.phase, r.id");
  query.run(tool);
  std::vector<ReferenceUse> uses;
  while (query.next()) uses.push_back({.date = storedDate(query.text(0)), .reference = query.text(1)});
  return uses;
}

std::vector<PointSummary> CheckTable::summaries(const std::string& tool) const {
  Statement query(database_, summaryQuery(" AND r.tool = ?"));
  return summariesOf(query.run(tool));
}

std::vector<PointSummary> CheckTable::allSummaries() const {
  Statement query(database_, summaryQuery(""));
  return summariesOf(query.run());
}

void CheckTable::forEachSummary(const std::function<void(const PointSummary&)>& visit) const {
  Statement query(database_, summaryQuery(""));
  visitSummaries(query.run(), visit);
}

std::int64_t CheckTable::newestId() const {
  Statement newest(database_, "SELECT COALESCE(MAX(id), 0) FROM check_record");
  newest.run().next();
  return newest.integer(0);
}

}  // namespace steadyturn
