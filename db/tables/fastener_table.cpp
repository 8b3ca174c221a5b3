#include "fastener_table.h"

#include <nlohmann/json.hpp>

#include "stored_values.h"

namespace steadyturn {

namespace {

constexpr const char* fastenerColumns =
    "SELECT r.fastener, r.number, r.assembly, r.component, r.thread, r.property_class, r.part_material, r.drive, "
    "r.unit, "
    "r.target, r.low, r.high, r.angle_deg, r.part_limit, r.seal, r.renew, r.lubrication, r.seat_check, r.source, "
    "r.revision, r.revision_reason, r.entry, r.id, r.stages, r.sequence, r.limit_basis, r.entered_by, "
    "(SELECT a.approved_by FROM fastener_approval a WHERE a.fastener = r.fastener AND a.number = r.number), "
    "(SELECT a.date FROM fastener_approval a WHERE a.fastener = r.fastener AND a.number = r.number) FROM "
    "fastener_revision r";
constexpr const char* newest =
    " WHERE NOT EXISTS (SELECT 1 FROM fastener_revision n WHERE n.fastener = r.fastener AND n.number > r.number)";

TighteningStages storedStages(const std::string& text) {
  const auto stages = parseStages(text, "stages");
  if (!stages || writeStages(*stages) != text) refuseDamaged(text);
  return *stages;
}

Fastener fastenerOf(const Statement& row) {
  return {.id = row.text(0),
          .assembly = row.text(2),
          .component = row.text(3),
          .thread = row.text(4),
          .propertyClass = row.text(5),
          .partMaterial = row.text(6),
          .drive = row.text(7),
          .unit = storedUnit(row.text(8)),
          .target = row.real(9),
          .low = row.optionalReal(10),
          .high = row.optionalReal(11),
          .angleDeg = row.optionalReal(12),
          .partLimit = row.optionalReal(13),
          .seal = row.text(14),
          .renew = storedOptionalBool(row, 15),
          .lubrication = row.text(16),
          .seatCheck = row.text(17),
          .source = row.text(18),
          .revision = row.text(19),
          .number = storedInt(row, 1),
          .revisionReason = row.text(20),
          .stages = storedStages(row.text(23)),
          .sequence = row.text(24),
          .limitBasis = row.text(25),
          .enteredBy = row.text(26),
          .approvedBy = row.text(27),
          .approvedOn = storedOptionalDate(row, 28)};
}

Facts factsOf(const Fastener& fastener) {
  Facts facts = Facts::object();
  facts["id"] = fastener.id;
  facts["number"] = fastener.number;
  facts["assembly"] = fastener.assembly;
  facts["component"] = fastener.component;
  facts["thread"] = fastener.thread;
  facts["property_class"] = fastener.propertyClass;
  facts["part_material"] = fastener.partMaterial;
  facts["drive"] = fastener.drive;
  facts["unit"] = unitCode(fastener.unit);
  facts["target"] = decimal(fastener.target);
  facts["low"] = decimal(fastener.low);
  facts["high"] = decimal(fastener.high);
  facts["angle_deg"] = decimal(fastener.angleDeg);
  facts["part_limit"] = decimal(fastener.partLimit);
  facts["seal"] = fastener.seal;
  facts["renew"] = orNull(fastener.renew);
  facts["lubrication"] = fastener.lubrication;
  facts["seat_check"] = fastener.seatCheck;
  facts["source"] = fastener.source;
  facts["revision"] = fastener.revision;
  facts["revision_reason"] = fastener.revisionReason;
  // Entries older than these facts do not have them; neither does an entry that has nothing to say.
  const auto unlessEmpty = [&](const char* name, const std::string& text) {
    if (!text.empty()) facts[name] = text;
  };
  unlessEmpty("stages", writeStages(fastener.stages));
  unlessEmpty("sequence", fastener.sequence);
  unlessEmpty("limit_basis", fastener.limitBasis);
  unlessEmpty("entered_by", fastener.enteredBy);
  return facts;
}

std::vector<Fastener> fastenersOf(Statement& query) {
  std::vector<Fastener> fasteners;
  while (query.next()) fasteners.push_back(fastenerOf(query));
  return fasteners;
}

}  // namespace

FastenerTable::FastenerTable(Database& database, Ledger& ledger)
    : database_(database),
      ledger_(ledger),
      insert_(database,
              "INSERT INTO fastener_revision (id, fastener, number, assembly, component, thread, property_class, "
              "part_material, "
              "drive, unit, target, low, high, angle_deg, part_limit, seal, renew, lubrication, seat_check, source, "
              "revision, revision_reason, entry, stages, sequence, limit_basis, entered_by) VALUES ((SELECT "
              "COALESCE(MAX(id), 0) + 1 FROM fastener_revision), ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, "
              "?, ?, ?, ?, ?, ?, ?, ?, ?) "
              "RETURNING id"),
      search_(database) {}

void FastenerTable::add(const Fastener& fastener, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "fastener", factsOf(fastener));
  insert_.run(fastener.id, fastener.number, fastener.assembly, fastener.component, fastener.thread,
              fastener.propertyClass, fastener.partMaterial, fastener.drive, unitCode(fastener.unit), fastener.target,
              fastener.low, fastener.high, fastener.angleDeg, fastener.partLimit, fastener.seal, fastener.renew,
              fastener.lubrication, fastener.seatCheck, fastener.source, fastener.revision, fastener.revisionReason,
              entry, writeStages(fastener.stages), fastener.sequence, fastener.limitBasis, fastener.enteredBy);
  insert_.next();
  const auto id = insert_.integer(0);
  insert_.finish();
  search_.index(fastener, id);
}

std::optional<Fastener> FastenerTable::find(const std::string& id) const {
  Statement query(database_, std::string(fastenerColumns) + " WHERE r.fastener = ? ORDER BY r.number DESC LIMIT 1");
  return query.run(id).next() ? std::optional(fastenerOf(query)) : std::nullopt;
}

std::optional<Fastener> FastenerTable::find(const std::string& id, int number) const {
  Statement query(database_, std::string(fastenerColumns) + " WHERE r.fastener = ? AND r.number = ?");
  return query.run(id, number).next() ? std::optional(fastenerOf(query)) : std::nullopt;
}

std::vector<Fastener> FastenerTable::all() const {
  Statement query(database_, std::string(fastenerColumns) + newest + " ORDER BY r.fastener");
  return fastenersOf(query.run());
}

std::vector<Fastener> FastenerTable::revisions(const std::string& id) const {
  Statement query(database_, std::string(fastenerColumns) + " WHERE r.fastener = ? ORDER BY r.number");
  return fastenersOf(query.run(id));
}

std::vector<Fastener> FastenerTable::search(const std::string& words, int limit) const {
  const auto expression = search_.expression(words);
  if (expression.empty()) {
    Statement query(database_, std::string(fastenerColumns) + newest + " ORDER BY r.fastener LIMIT ?");
    return fastenersOf(query.run(limit));
  }
  Statement query(database_, std::string(fastenerColumns) + search_.join());
  auto found = fastenersOf(query.run(expression, limit));
  if (!found.empty()) return found;
  const auto forgiving = search_.forgivingExpression(words);
  return forgiving.empty() ? found : fastenersOf(query.run(forgiving, limit));
}

ProvenRows FastenerTable::proven() const {
  const RecordKind kind{.kind = "fastener", .name = {{"fastener", "id", 0}, {"revision", "number", 1}}};
  return {database_, kind, std::string(fastenerColumns) + " ORDER BY r.entry, r.id", 21, [](const Statement& row) {
            return ProvenFacts{.facts = factsOf(fastenerOf(row)), .place = row.integer(22)};
          }};
}

}  // namespace steadyturn
