#include "tightening_table.h"

#include <nlohmann/json.hpp>

#include "connection.h"
#include "stored_values.h"

namespace steadyturn {

namespace {

constexpr const char* columns =
    "SELECT t.id, t.job, j.vehicle, t.date, t.fastener, t.fastener_number, t.tool, t.setting, t.unit, "
    "t.seat_checked, "
    "t.done_by, t.entry, t.stages_done, t.seal_renewed FROM tightening t ";
constexpr const char* withJob = "JOIN job j ON j.id = t.job";

Tightening tighteningOf(const Statement& row) {
  return {.id = row.integer(0),
          .job = row.text(1),
          .vehicle = row.text(2),
          .date = storedDate(row.text(3)),
          .fastener = row.text(4),
          .fastenerNumber = storedInt(row, 5),
          .tool = row.text(6),
          .setting = row.text(7),
          .unit = storedUnit(row.text(8)),
          .seatChecked = storedOptionalBool(row, 9),
          .by = row.text(10),
          .stagesDone = storedOptionalInt(row, 12),
          .sealRenewed = storedOptionalBool(row, 13)};
}

Facts factsOf(const Tightening& tightening, std::int64_t id) {
  Facts facts = Facts::object();
  facts["id"] = id;
  facts["job"] = tightening.job;
  facts["vehicle"] = tightening.vehicle;
  facts["date"] = writeDate(tightening.date);
  facts["fastener"] = tightening.fastener;
  facts["fastener_number"] = tightening.fastenerNumber;
  facts["tool"] = tightening.tool;
  facts["setting"] = tightening.setting;
  facts["unit"] = unitCode(tightening.unit);
  facts["seat_checked"] = orNull(tightening.seatChecked);
  facts["by"] = tightening.by;
  // Entries older than these facts do not have them.
  if (tightening.stagesDone) facts["stages_done"] = *tightening.stagesDone;
  if (tightening.sealRenewed) facts["seal_renewed"] = *tightening.sealRenewed;
  return facts;
}

std::vector<Tightening> tighteningsOf(Statement& query) {
  std::vector<Tightening> tightenings;
  while (query.next()) tightenings.push_back(tighteningOf(query));
  return tightenings;
}

}  // namespace

TighteningTable::TighteningTable(Database& database, Ledger& ledger)
    : database_(database),
      ledger_(ledger),
      insert_(database,
              "INSERT INTO tightening (id, job, date, fastener, fastener_number, tool, setting, unit, seat_checked, "
              "done_by, "
              "entry, stages_done, seal_renewed) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)"),
      same_(database,
            "SELECT 1 FROM tightening t JOIN job j ON j.id = t.job WHERE t.job = ? AND j.vehicle = ? AND t.date = ? "
            "AND "
            "t.fastener = ? AND t.fastener_number = ? AND t.tool = ? AND t.setting = ? AND t.unit = ? AND "
            "t.seat_checked IS NOT DISTINCT FROM ? AND t.done_by = ?") {}

void TighteningTable::ensureJob(const std::string& job, const std::string& vehicle) {
  if (job == lastJob_ && vehicle == lastVehicle_) return;
  Statement(database_, "INSERT INTO job (id, vehicle) VALUES (?, ?) ON CONFLICT (id) DO NOTHING").run(job, vehicle);
  if (!Statement(database_, "SELECT 1 FROM job WHERE id = ? AND vehicle = ?").run(job, vehicle).next()) {
    throw StoreError({.kind = ProblemKind::Conflict,
                      .field = "vehicle",
                      .found = vehicle,
                      .accepted = "the vehicle that job " + job + " was opened for"});
  }
  lastJob_ = job;
  lastVehicle_ = vehicle;
}

std::int64_t TighteningTable::add(const Tightening& tightening, const EntryStamp& stamp) {
  if (const auto& connection = database_.connection(); countedIn_ != connection.transactions) {
    Statement newest(database_, "SELECT COALESCE(MAX(id), 0) FROM tightening");
    newest.run().next();
    nextId_ = newest.integer(0) + 1;
    lastJob_.clear();
    lastVehicle_.clear();
    countedIn_ = connection.transactions;
  }
  const auto id = nextId_;
  const auto entry = ledger_.append(stamp, "tightening", factsOf(tightening, id));
  ensureJob(tightening.job, tightening.vehicle);
  insert_.run(id, tightening.job, writeDate(tightening.date), tightening.fastener, tightening.fastenerNumber,
              tightening.tool, tightening.setting, unitCode(tightening.unit), tightening.seatChecked, tightening.by,
              entry, tightening.stagesDone, tightening.sealRenewed);
  ++nextId_;
  return id;
}

bool TighteningTable::exists(const Tightening& tightening) const {
  const bool found = same_
                         .run(tightening.job, tightening.vehicle, writeDate(tightening.date), tightening.fastener,
                              tightening.fastenerNumber, tightening.tool, tightening.setting,
                              unitCode(tightening.unit), tightening.seatChecked, tightening.by)
                         .next();
  same_.finish();
  return found;
}

std::vector<Tightening> TighteningTable::all() const {
  Statement query(database_, std::string(columns) + withJob + " ORDER BY t.date, t.job, t.id");
  return tighteningsOf(query.run());
}

std::vector<Tightening> TighteningTable::ofTool(const std::string& tool, Date from, Date to) const {
  Statement query(database_, std::string(columns) + withJob +
                                 " WHERE t.tool = ? AND t.date BETWEEN ? AND ? ORDER BY t.date, t.id");
  return tighteningsOf(query.run(tool, writeDate(from), writeDate(to)));
}

std::vector<TighteningTable::DayCount> TighteningTable::countedByDay(const std::string& tool, Date to) const {
  Statement query(database_,
                  "SELECT date, COUNT(*) FROM tightening WHERE tool = ? AND date <= ? GROUP BY date ORDER BY date");
  query.run(tool, writeDate(to));
  std::vector<DayCount> days;
  while (query.next()) days.push_back({.date = storedDate(query.text(0)), .tightenings = query.integer(1)});
  return days;
}

std::vector<Tightening> TighteningTable::ofJob(const std::string& job) const {
  Statement query(database_, std::string(columns) + withJob + " WHERE t.job = ? ORDER BY t.date, t.id");
  return tighteningsOf(query.run(job));
}

void TighteningTable::forEachDaysCount(
    Date to, const std::function<void(const std::string&, Date, std::int64_t)>& visit) const {
  Statement query(
      database_,
      "SELECT tool, date, COUNT(*) FROM tightening WHERE date <= ? GROUP BY tool, date ORDER BY tool, date");
  query.run(writeDate(to));
  while (query.next()) visit(query.text(0), storedDate(query.text(1)), query.integer(2));
}

std::int64_t TighteningTable::newestId() const {
  Statement newest(database_, "SELECT COALESCE(MAX(id), 0) FROM tightening");
  newest.run().next();
  return newest.integer(0);
}

ProvenRows TighteningTable::proven() const {
  const RecordKind kind{.kind = "tightening", .name = {{"tightening", "id", 0}}};
  // A tightening whose job is gone must be seen, not left out.
  return {database_, kind, std::string(columns) + "LEFT " + withJob + " ORDER BY t.entry, t.id", 11,
          [](const Statement& row) { return ProvenFacts{.facts = factsOf(tighteningOf(row), row.integer(0))}; }};
}

}  // namespace steadyturn
