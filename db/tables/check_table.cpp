#include "check_table.h"

#include <limits>
#include <memory>
#include <nlohmann/json.hpp>

#include "check_facts.h"
#include "connection.h"
#include "stored_values.h"

namespace steadyturn {

namespace {

constexpr const char* checkColumns =
    "SELECT r.id, r.tool, r.date, r.phase, r.reference, r.checked_by, r.direction, r.temperature_c, "
    "r.humidity_percent, "
    "r.note, r.limit_percent, r.rule, r.reference_expanded_percent, r.reference_coverage_factor, "
    "r.reference_error_percent, r.span_reproducibility, r.span_drive, r.span_interface, r.span_loading_point, "
    "r.verdict, "
    "r.corrects, r.correction_reason, c.id, r.entry FROM check_record r LEFT JOIN check_record c ON c.corrects = "
    "r.id";
constexpr const char* pointColumns =
    "SELECT target, unit, readings, mean_deviation, repeatability, standard_uncertainty, interval_percent, "
    "conformity_probability, verdict, position, reading_count, check_id FROM check_point ";
constexpr const char* intoPoints =
    "INSERT INTO check_point (check_id, position, target, unit, readings, reading_count, mean_deviation, "
    "repeatability, standard_uncertainty, interval_percent, conformity_probability, verdict) VALUES ";
constexpr const char* pointMarks = "(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";
constexpr const char* ofOneCheck = "WHERE check_id = ? ORDER BY position";
constexpr const char* notCorrected = "NOT EXISTS (SELECT 1 FROM check_record c WHERE c.corrects = r.id)";

Verdict storedVerdict(const std::string& text) { return stored(parseVerdict(text), text); }

Check checkOf(const Statement& row) {
  return {.id = row.integer(0),
          .tool = row.text(1),
          .date = storedDate(row.text(2)),
          .phase = stored(parsePhase(row.text(3)), row.text(3)),
          .reference = row.text(4),
          .by = row.text(5),
          .direction = stored(parseDirection(row.text(6)), row.text(6)),
          .temperatureC = row.optionalReal(7),
          .humidityPercent = row.optionalReal(8),
          .note = row.text(9),
          .limitPercent = row.real(10),
          .rule = stored(parseRule(row.text(11)), row.text(11)),
          .referenceUncertainty = {.expandedPercent = row.real(12),
                                   .coverageFactor = row.real(13),
                                   .errorPercent = row.real(14)},
          .variation = {.reproducibility = row.optionalReal(15),
                        .drive = row.optionalReal(16),
                        .interface = row.optionalReal(17),
                        .loadingPoint = row.optionalReal(18)},
          .verdict = storedVerdict(row.text(19)),
          .points = {},
          .corrects = row.optionalInteger(20),
          .correctionReason = row.text(21),
          .correctedBy = row.optionalInteger(22)};
}

CheckPoint pointOf(const Statement& row) {
  return {.target = {row.real(0), storedUnit(row.text(1))},
          .readings = parseReadings(row.text(2)),
          .meanDeviation = row.real(3),
          .repeatability = row.optionalReal(4),
          .standardUncertainty = row.real(5),
          .interval = row.real(6),
          .conformityProbability = row.real(7),
          .verdict = storedVerdict(row.text(8))};
}

// Reads checks with their points. A check and its points are written at once and never change, so asking for the
// points check by check can't mix two moments.
void visitChecks(Database& database, Statement& checks, const std::function<bool(const Check&)>& visit) {
  Statement points(database, std::string(pointColumns) + ofOneCheck);
  while (checks.next()) {
    auto check = checkOf(checks);
    points.run(check.id);
    while (points.next()) check.points.push_back(pointOf(points));
    if (!visit(check)) return;
  }
}

// What a point's row says twice is the same both times, and was written as the store writes it.
void demandWhole(const Statement& row, const CheckPoint& point, std::size_t position) {
  if (row.integer(9) != static_cast<std::int64_t>(position)) refuseDamaged("position " + row.text(9));
  if (row.integer(10) != static_cast<std::int64_t>(point.readings.size()))
    refuseDamaged("reading count " + row.text(10));
  if (const auto readings = row.text(2); writeReadings(point.readings) != readings) refuseDamaged(readings);
}

// The points of check after check. Checks come by their ids where nobody meddled, so one walk along all points serves
// them; for one that comes out of order they are asked for.
class PointWalk {
 public:
  explicit PointWalk(Database& database)
      : all_(database, std::string(pointColumns) + "ORDER BY check_id, position"),
        one_(database, std::string(pointColumns) + ofOneCheck) {}

  void addTo(Check& check) {
    if (check.id <= reached_) {
      one_.run(check.id);
      while (one_.next()) add(one_, check);
      return;
    }
    if (reached_ == before) more_ = all_.run().next();
    reached_ = check.id;
    while (more_ && all_.integer(11) < check.id) more_ = all_.next();
    for (; more_ && all_.integer(11) == check.id; more_ = all_.next()) add(all_, check);
  }

 private:
  static constexpr auto before = std::numeric_limits<std::int64_t>::min();
  static void add(const Statement& row, Check& check) {
    check.points.push_back(pointOf(row));
    demandWhole(row, check.points.back(), check.points.size() - 1);
  }

  Statement all_, one_;
  std::int64_t reached_ = before;
  bool more_ = false;
};

std::vector<Check> checksOf(Database& database, Statement& query) {
  std::vector<Check> checks;
  visitChecks(database, query, [&](const Check& check) {
    checks.push_back(check);
    return true;
  });
  return checks;
}

}  // namespace

CheckTable::CheckTable(Database& database, Ledger& ledger)
    : database_(database),
      ledger_(ledger),
      insertCheck_(
          database,
          "INSERT INTO check_record (id, tool, date, phase, reference, checked_by, direction, temperature_c, "
          "humidity_percent, note, limit_percent, rule, reference_expanded_percent, reference_coverage_factor, "
          "reference_error_percent, span_reproducibility, span_drive, span_interface, span_loading_point, verdict, "
          "corrects, correction_reason, entry) "
          "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"),
      insertPoint_(database, std::string(intoPoints) + pointMarks),
      same_(database, std::string("SELECT 1 FROM check_record r WHERE r.tool = ? AND r.date = ? AND r.phase = ? AND "
                                  "r.direction = ? AND ") +
                          notCorrected) {}

std::int64_t CheckTable::nextId() {
  if (const auto& connection = database_.connection(); countedIn_ != connection.transactions) {
    Statement newest(database_, "SELECT COALESCE(MAX(id), 0) FROM check_record");
    newest.run().next();
    next_ = newest.integer(0) + 1;
    countedIn_ = connection.transactions;
  }
  return next_;
}

std::int64_t CheckTable::add(const Check& check, const EntryStamp& stamp) {
  const auto id = nextId();
  const auto entry = ledger_.append(stamp, "check", checkFacts(check, id));
  const auto reference = check.reference.empty() ? std::nullopt : std::optional(check.reference);
  insertCheck_.run(id, check.tool, writeDate(check.date), writePhase(check.phase), reference, check.by,
                   writeDirection(check.direction), check.temperatureC, check.humidityPercent, check.note,
                   check.limitPercent, writeRule(check.rule), check.referenceUncertainty.expandedPercent,
                   check.referenceUncertainty.coverageFactor, check.referenceUncertainty.errorPercent,
                   check.variation.reproducibility, check.variation.drive, check.variation.interface,
                   check.variation.loadingPoint, writeVerdict(check.verdict), check.corrects, check.correctionReason,
                   entry);
  addPoints(check, id);
  ++next_;
  return id;
}

// To a server all of them go at once: each journey takes longer than a row.
void CheckTable::addPointsAtOnce(const Check& check, std::int64_t id) {
  std::string marks;
  QVariantList values;
  int position = 0;
  for (const auto& point : check.points) {
    marks += std::string(marks.empty() ? "" : ", ") + pointMarks;
    values << boundValue(id) << boundValue(position++) << boundValue(point.target.value)
           << boundValue(unitCode(point.target.unit)) << boundValue(writeReadings(point.readings))
           << boundValue(static_cast<std::int64_t>(point.readings.size())) << boundValue(point.meanDeviation)
           << boundValue(point.repeatability) << boundValue(point.standardUncertainty) << boundValue(point.interval)
           << boundValue(point.conformityProbability) << boundValue(writeVerdict(point.verdict));
  }
  if (marks.empty()) return;
  Statement(database_, intoPoints + marks).runBound(values);
}

void CheckTable::addPoints(const Check& check, std::int64_t id) {
  if (database_.connection().onServer()) return addPointsAtOnce(check, id);
  int position = 0;
  for (const auto& point : check.points) {
    insertPoint_.run(id, position++, point.target.value, unitCode(point.target.unit), writeReadings(point.readings),
                     static_cast<std::int64_t>(point.readings.size()), point.meanDeviation, point.repeatability,
                     point.standardUncertainty, point.interval, point.conformityProbability,
                     writeVerdict(point.verdict));
  }
}

std::optional<Check> CheckTable::find(std::int64_t id) const {
  Statement query(database_, std::string(checkColumns) + " WHERE r.id = ?");
  auto checks = checksOf(database_, query.run(id));
  return checks.empty() ? std::nullopt : std::optional(std::move(checks.front()));
}

std::vector<Check> CheckTable::ofTool(const std::string& tool) const {
  Statement query(database_, std::string(checkColumns) + " WHERE r.tool = ? ORDER BY r.date, r.phase, r.id");
  return checksOf(database_, query.run(tool));
}

std::vector<Check> CheckTable::newest(int limit) const {
  Statement query(database_, std::string(checkColumns) + " ORDER BY r.date DESC, r.id DESC LIMIT ?");
  return checksOf(database_, query.run(limit));
}

void CheckTable::forEach(const std::function<bool(const Check&)>& visit) const {
  Statement query(database_,
                  std::string(checkColumns) + " WHERE c.id IS NULL ORDER BY r.tool, r.date, r.phase, r.id");
  visitChecks(database_, query.run(), visit);
}

bool CheckTable::exists(const std::string& tool, Date date, Phase phase, Direction direction) const {
  const bool found = same_.run(tool, writeDate(date), writePhase(phase), writeDirection(direction)).next();
  same_.finish();
  return found;
}

ProvenRows CheckTable::proven(Assay<Check> assay) const {
  const auto points = std::make_shared<PointWalk>(database_);
  const RecordKind kind{.kind = "check", .name = {{"check", "id", 0}}};
  return {database_, kind, std::string(checkColumns) + " ORDER BY r.entry, r.id", 23,
          [points, assay = std::move(assay)](const Statement& row) {
            auto check = checkOf(row);
            points->addTo(check);
            auto facts = checkFacts(check, check.id);
            return withAssay(std::move(facts), std::move(check), assay);
          }};
}

}  // namespace steadyturn
