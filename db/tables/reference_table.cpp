#include "reference_table.h"

#include <nlohmann/json.hpp>

#include "stored_values.h"

namespace steadyturn {

namespace {

constexpr const char* referenceColumns =
    "SELECT id, description, serial, certificate, calibrated, due, expanded_uncertainty_percent, coverage_factor, "
    "error_percent, entry FROM reference_standard";

Reference referenceOf(const Statement& row) {
  return {.id = row.text(0),
          .description = row.text(1),
          .serial = row.text(2),
          .certificate = row.text(3),
          .calibrated = storedOptionalDate(row, 4),
          .due = storedOptionalDate(row, 5),
          .expandedUncertaintyPercent = row.real(6),
          .coverageFactor = row.optionalReal(7),
          .errorPercent = row.optionalReal(8)};
}

Facts factsOf(const Reference& reference) {
  Facts facts = Facts::object();
  facts["id"] = reference.id;
  facts["description"] = reference.description;
  facts["serial"] = reference.serial;
  facts["certificate"] = reference.certificate;
  facts["calibrated"] = dateFact(reference.calibrated);
  facts["due"] = dateFact(reference.due);
  facts["expanded_uncertainty_percent"] = decimal(reference.expandedUncertaintyPercent);
  facts["coverage_factor"] = decimal(reference.coverageFactor);
  facts["error_percent"] = decimal(reference.errorPercent);
  return facts;
}

}  // namespace

ReferenceTable::ReferenceTable(Database& database, Ledger& ledger)
    : database_(database),
      ledger_(ledger),
      insert_(database,
              "INSERT INTO reference_standard (id, description, serial, certificate, calibrated, due, "
              "expanded_uncertainty_percent, coverage_factor, error_percent, entry) VALUES (?, ?, ?, ?, ?, ?, ?, ?, "
              "?, ?)") {}

void ReferenceTable::add(const Reference& reference, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "reference", factsOf(reference));
  insert_.run(reference.id, reference.description, reference.serial, reference.certificate,
              dateText(reference.calibrated), dateText(reference.due), reference.expandedUncertaintyPercent,
              reference.coverageFactor, reference.errorPercent, entry);
}

std::optional<Reference> ReferenceTable::find(const std::string& id) const {
  Statement query(database_, std::string(referenceColumns) + " WHERE id = ?");
  return query.run(id).next() ? std::optional(referenceOf(query)) : std::nullopt;
}

std::vector<Reference> ReferenceTable::all() const {
  Statement query(database_, std::string(referenceColumns) + " ORDER BY id");
  query.run();
  std::vector<Reference> references;
  while (query.next()) references.push_back(referenceOf(query));
  return references;
}

ProvenRows ReferenceTable::proven() const {
  const RecordKind kind{.kind = "reference", .name = {{"reference", "id", 0}}};
  return {database_, kind, std::string(referenceColumns) + " ORDER BY entry, id", 9,
          [](const Statement& row) { return ProvenFacts{.facts = factsOf(referenceOf(row))}; }};
}

}  // namespace steadyturn
