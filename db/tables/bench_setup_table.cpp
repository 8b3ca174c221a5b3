#include "bench_setup_table.h"

#include <nlohmann/json.hpp>

#include "stored_values.h"

namespace steadyturn {

namespace {

constexpr const char* columns =
    "SELECT id, maker, description, type, class, maximum, maximum_unit, date, done_by, reference, target, unit, "
    "readings, span_reproducibility, span_drive, span_interface, span_loading_point, basis, note, entry FROM "
    "bench_setup";
constexpr const char* newestFirst = " ORDER BY date DESC, id DESC";

Facts readingsFacts(const BenchSetup& setup) {
  Facts facts = Facts::object();
  for (const auto run : allSetupRuns) {
    if (setup.measured(run)) facts[rulesFor(run).name] = setup.readingsOf(run);
  }
  return facts;
}

void readReadings(const std::string& json, BenchSetup& setup) {
  const auto parsed = Facts::parse(json, nullptr, false);
  if (!parsed.is_object()) refuseDamaged(json);
  try {
    for (const auto run : allSetupRuns) {
      const auto found = parsed.find(rulesFor(run).name);
      if (found != parsed.end()) setup.readings[static_cast<std::size_t>(run)] = found->get<TypedSeries>();
    }
  } catch (const Facts::exception&) {
    refuseDamaged(json);
  }
}

BenchSetup setupOf(const Statement& row) {
  BenchSetup setup{.id = row.integer(0),
                   .model = {.maker = row.text(1),
                             .description = row.text(2),
                             .kind = storedKind(row.text(3), row.text(4)),
                             .maximum = {row.real(5), storedUnit(row.text(6))}},
                   .date = storedDate(row.text(7)),
                   .by = row.text(8),
                   .reference = row.text(9),
                   .target = {row.real(10), storedUnit(row.text(11))},
                   .readings = {},
                   .spans = {.reproducibility = row.optionalReal(13),
                             .drive = row.optionalReal(14),
                             .interface = row.optionalReal(15),
                             .loadingPoint = row.optionalReal(16)},
                   .basis = row.text(17),
                   .note = row.text(18)};
  readReadings(row.text(12), setup);
  return setup;
}

std::vector<BenchSetup> setupsOf(Statement& query) {
  std::vector<BenchSetup> setups;
  while (query.next()) setups.push_back(setupOf(query));
  return setups;
}

}  // namespace

BenchSetupTable::BenchSetupTable(Database& database, Ledger& ledger) : database_(database), ledger_(ledger) {}

std::int64_t BenchSetupTable::add(const BenchSetup& setup, const EntryStamp& stamp) {
  Statement newest(database_, "SELECT COALESCE(MAX(id), 0) FROM bench_setup");
  newest.run().next();
  const auto id = newest.integer(0) + 1;
  newest.finish();
  const auto entry = ledger_.append(stamp, "bench_setup", benchSetupFacts(setup, id));
  const auto reference = setup.reference.empty() ? std::nullopt : std::optional(setup.reference);
  Statement(database_,
            "INSERT INTO bench_setup (id, maker, description, type, class, maximum, maximum_unit, date, done_by, "
            "reference, target, unit, readings, span_reproducibility, span_drive, span_interface, "
            "span_loading_point, basis, note, entry) "
            "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
      .run(id, setup.model.maker, setup.model.description, writeType(setup.model.kind.type),
           writeClass(setup.model.kind.cls), setup.model.maximum.value, unitCode(setup.model.maximum.unit),
           writeDate(setup.date), setup.by, reference, setup.target.value, unitCode(setup.target.unit),
           readingsFacts(setup).dump(), setup.spans.reproducibility, setup.spans.drive, setup.spans.interface,
           setup.spans.loadingPoint, setup.basis, setup.note, entry);
  return id;
}

std::vector<BenchSetup> BenchSetupTable::all() const {
  Statement query(database_, std::string(columns) + newestFirst);
  return setupsOf(query.run());
}

std::vector<BenchSetup> BenchSetupTable::ofModel(const ToolModel& model) const {
  Statement query(database_, std::string(columns) +
                                 " WHERE maker = ? AND description = ? AND type = ? AND class = ? AND maximum = ? "
                                 "AND maximum_unit = ?" +
                                 newestFirst);
  return setupsOf(query.run(model.maker, model.description, writeType(model.kind.type), writeClass(model.kind.cls),
                            model.maximum.value, unitCode(model.maximum.unit)));
}

void BenchSetupTable::setRange(const std::string& reference, const ReferenceRange& range, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "reference_range", referenceRangeFacts(reference, range));
  Statement(database_, "INSERT INTO reference_range (entry, reference, low, high, unit) VALUES (?, ?, ?, ?, ?)")
      .run(entry, reference, range.low, range.high, unitCode(range.unit));
}

std::optional<ReferenceRange> BenchSetupTable::rangeOf(const std::string& reference) const {
  Statement query(database_,
                  "SELECT low, high, unit FROM reference_range WHERE reference = ? ORDER BY entry DESC LIMIT 1");
  if (!query.run(reference).next()) return std::nullopt;
  return ReferenceRange{.low = query.real(0), .high = query.real(1), .unit = storedUnit(query.text(2))};
}

ProvenRows BenchSetupTable::proven() const {
  const RecordKind kind{.kind = "bench_setup", .name = {{"bench set-up", "id", 0}}};
  return {database_, kind, std::string(columns) + " ORDER BY entry, id", 19, [](const Statement& row) {
            const auto setup = setupOf(row);
            if (const auto readings = row.text(12); readingsFacts(setup).dump() != readings) refuseDamaged(readings);
            return ProvenFacts{.facts = benchSetupFacts(setup, setup.id)};
          }};
}

ProvenRows BenchSetupTable::provenRanges() const {
  const RecordKind kind{.kind = "reference_range", .name = {{"range of reference", "reference", 1}}};
  return {database_, kind, "SELECT entry, reference, low, high, unit FROM reference_range ORDER BY entry", 0,
          [](const Statement& row) {
            const ReferenceRange range{.low = row.real(2), .high = row.real(3), .unit = storedUnit(row.text(4))};
            return ProvenFacts{.facts = referenceRangeFacts(row.text(1), range)};
          }};
}

Facts benchSetupFacts(const BenchSetup& setup, std::int64_t id) {
  Facts facts = Facts::object();
  facts["id"] = id;
  facts["maker"] = setup.model.maker;
  facts["description"] = setup.model.description;
  facts["type"] = writeType(setup.model.kind.type);
  facts["class"] = writeClass(setup.model.kind.cls);
  facts["maximum"] = decimal(setup.model.maximum.value);
  facts["maximum_unit"] = unitCode(setup.model.maximum.unit);
  facts["date"] = writeDate(setup.date);
  facts["by"] = setup.by;
  facts["reference"] = setup.reference;
  facts["target"] = decimal(setup.target.value);
  facts["unit"] = unitCode(setup.target.unit);
  facts["readings"] = readingsFacts(setup);
  facts["span_reproducibility"] = decimal(setup.spans.reproducibility);
  facts["span_drive"] = decimal(setup.spans.drive);
  facts["span_interface"] = decimal(setup.spans.interface);
  facts["span_loading_point"] = decimal(setup.spans.loadingPoint);
  facts["basis"] = setup.basis;
  facts["note"] = setup.note;
  return facts;
}

Facts referenceRangeFacts(const std::string& reference, const ReferenceRange& range) {
  Facts facts = Facts::object();
  facts["reference"] = reference;
  facts["low"] = decimal(range.low);
  facts["high"] = decimal(range.high);
  facts["unit"] = unitCode(range.unit);
  return facts;
}

}  // namespace steadyturn
