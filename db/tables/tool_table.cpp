#include "tool_table.h"

#include <nlohmann/json.hpp>

#include "stored_values.h"

namespace steadyturn {

namespace {

constexpr const char* toolColumns =
    "SELECT id, description, maker, serial, type, class, unit, minimum, maximum, resolution, drive, interval_days, "
    "limit_percent, status, status_reason, entry FROM tool";

Tool toolOf(const Statement& row) {
  return {.id = row.text(0),
          .description = row.text(1),
          .maker = row.text(2),
          .serial = row.text(3),
          .kind = storedKind(row.text(4), row.text(5)),
          .unit = storedUnit(row.text(6)),
          .minimum = row.optionalReal(7),
          .maximum = row.real(8),
          .resolution = row.optionalReal(9),
          .drive = row.text(10),
          .intervalDays = storedOptionalInt(row, 11),
          .limitPercent = row.optionalReal(12),
          .status = stored(parseToolStatus(row.text(13)), row.text(13)),
          .statusReason = row.text(14)};
}

Facts factsOf(const Tool& tool) {
  Facts facts = Facts::object();
  facts["id"] = tool.id;
  facts["description"] = tool.description;
  facts["maker"] = tool.maker;
  facts["serial"] = tool.serial;
  facts["type"] = writeType(tool.kind.type);
  facts["class"] = writeClass(tool.kind.cls);
  facts["unit"] = unitCode(tool.unit);
  facts["minimum"] = decimal(tool.minimum);
  facts["maximum"] = decimal(tool.maximum);
  facts["resolution"] = decimal(tool.resolution);
  facts["drive"] = tool.drive;
  facts["interval_days"] = orNull(tool.intervalDays);
  facts["limit_percent"] = decimal(tool.limitPercent);
  facts["status"] = writeToolStatus(tool.status);
  facts["status_reason"] = tool.statusReason;
  return facts;
}

Facts statusFacts(const std::string& tool, std::string_view status, const std::string& reason,
                  const std::string& date) {
  Facts facts = Facts::object();
  facts["tool"] = tool;
  facts["date"] = date;
  facts["status"] = status;
  facts["reason"] = reason;
  return facts;
}

}  // namespace

ToolTable::ToolTable(Database& database, Ledger& ledger)
    : database_(database),
      ledger_(ledger),
      insert_(
          database,
          "INSERT INTO tool (id, description, maker, serial, type, class, unit, minimum, maximum, resolution, drive, "
          "interval_days, limit_percent, status, status_reason, entry) "
          "VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)") {}

void ToolTable::add(const Tool& tool, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "tool", factsOf(tool));
  insert_.run(tool.id, tool.description, tool.maker, tool.serial, writeType(tool.kind.type),
              writeClass(tool.kind.cls), unitCode(tool.unit), tool.minimum, tool.maximum, tool.resolution, tool.drive,
              tool.intervalDays, tool.limitPercent, writeToolStatus(tool.status), tool.statusReason, entry);
}

std::optional<Tool> ToolTable::find(const std::string& id) const {
  Statement query(database_, std::string(toolColumns) + " WHERE id = ?");
  return query.run(id).next() ? std::optional(toolOf(query)) : std::nullopt;
}

std::size_t ToolTable::count() const {
  Statement query(database_, "SELECT COUNT(*) FROM tool");
  query.run().next();
  return static_cast<std::size_t>(query.integer(0));
}

std::vector<Tool> ToolTable::all() const {
  Statement query(database_, std::string(toolColumns) + " ORDER BY id");
  query.run();
  std::vector<Tool> tools;
  while (query.next()) tools.push_back(toolOf(query));
  return tools;
}

void ToolTable::setStatus(const std::string& id, ToolStatus status, const std::string& reason, Date date,
                          const EntryStamp& stamp) {
  const auto entry =
      ledger_.append(stamp, "tool_status", statusFacts(id, writeToolStatus(status), reason, writeDate(date)));
  Statement(database_, "INSERT INTO tool_status_event (entry, tool, date, status, reason) VALUES (?, ?, ?, ?, ?)")
      .run(entry, id, writeDate(date), writeToolStatus(status), reason);
  Statement(database_, "UPDATE tool SET status = ?, status_reason = ? WHERE id = ?")
      .run(writeToolStatus(status), reason, id);
}

std::vector<DatedStatus> ToolTable::statusEvents(const std::string& id) const {
  Statement query(database_, "SELECT date, status, reason FROM tool_status_event WHERE tool = ? ORDER BY entry");
  query.run(id);
  std::vector<DatedStatus> events;
  while (query.next()) {
    const auto status = query.text(1);
    events.push_back({.date = storedDate(query.text(0)),
                      .status = stored(parseToolStatus(status), status),
                      .reason = query.text(2)});
  }
  return events;
}

ProvenRows ToolTable::proven(Assay<Tool> assay) const {
  const RecordKind kind{.kind = "tool", .name = {{"tool", "id", 0}}, .changing = {"status", "status_reason"}};
  return {database_, kind, std::string(toolColumns) + " ORDER BY entry, id", 15,
          [assay = std::move(assay)](const Statement& row) {
            auto tool = toolOf(row);
            auto facts = factsOf(tool);
            return withAssay(std::move(facts), std::move(tool), assay);
          }};
}

ProvenRows ToolTable::provenStatus() const {
  const RecordKind kind{.kind = "tool_status", .name = {{"tool", "tool", 1}, {"status of", "date", 2}}};
  return {database_, kind, "SELECT entry, tool, date, status, reason FROM tool_status_event ORDER BY entry", 0,
          [](const Statement& row) {
            return ProvenFacts{.facts = statusFacts(row.text(1), row.text(3), row.text(4), row.text(2))};
          }};
}

}  // namespace steadyturn
