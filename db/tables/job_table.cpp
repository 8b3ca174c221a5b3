#include "job_table.h"

#include <nlohmann/json.hpp>

#include "stored_values.h"

namespace steadyturn {

namespace {

// A sheet whose job is gone must be seen, not left out.
constexpr const char* eventColumns =
    "SELECT e.job, e.event, j.vehicle, e.date, e.service, e.fasteners, e.done_by, e.note, e.entry FROM job_event e "
    "LEFT JOIN job j ON j.id = e.job";

std::string marksText(const std::vector<std::string>& marks) { return Facts(marks).dump(); }

std::vector<std::string> storedMarks(const std::string& text) {
  const auto json = Facts::parse(text, nullptr, false);
  if (!json.is_array()) refuseDamaged(text);
  std::vector<std::string> marks;
  for (const auto& mark : json) {
    if (!mark.is_string()) refuseDamaged(text);
    marks.push_back(mark.get<std::string>());
  }
  if (marksText(marks) != text) refuseDamaged(text);
  return marks;
}

const char* eventText(JobEventKind kind) { return kind == JobEventKind::Opened ? "opened" : "closed"; }

JobEventKind storedEvent(const std::string& text) {
  for (const auto kind : {JobEventKind::Opened, JobEventKind::Closed}) {
    if (text == eventText(kind)) return kind;
  }
  refuseDamaged(text);
}

JobEvent eventOf(const Statement& row) {
  return {.kind = storedEvent(row.text(1)),
          .job = row.text(0),
          .vehicle = row.text(2),
          .date = storedDate(row.text(3)),
          .service = row.text(4),
          .fasteners = storedMarks(row.text(5)),
          .by = row.text(6),
          .note = row.text(7)};
}

Facts jobEventFacts(const JobEvent& event) {
  return {{"job", event.job},         {"event", eventText(event.kind)},
          {"vehicle", event.vehicle}, {"date", writeDate(event.date)},
          {"service", event.service}, {"fasteners", event.fasteners},
          {"by", event.by},           {"note", event.note}};
}

Facts serviceFacts(const ServiceList& service) { return {{"name", service.name}, {"fasteners", service.fasteners}}; }

}  // namespace

JobTable::JobTable(Database& database, Ledger& ledger) : database_(database), ledger_(ledger) {}

void JobTable::setService(const ServiceList& service, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "service", serviceFacts(service));
  Statement(database_, "INSERT INTO service_list (entry, name, fasteners) VALUES (?, ?, ?)")
      .run(entry, service.name, marksText(service.fasteners));
}

std::optional<ServiceList> JobTable::service(const std::string& name) const {
  Statement query(database_, "SELECT fasteners FROM service_list WHERE name = ? ORDER BY entry DESC LIMIT 1");
  if (!query.run(name).next()) return std::nullopt;
  return ServiceList{.name = name, .fasteners = storedMarks(query.text(0))};
}

std::vector<ServiceList> JobTable::services() const {
  Statement query(database_,
                  "SELECT s.name, s.fasteners FROM service_list s WHERE NOT EXISTS (SELECT 1 FROM service_list n "
                  "WHERE n.name = s.name AND n.entry > s.entry) ORDER BY s.name");
  query.run();
  std::vector<ServiceList> services;
  while (query.next()) services.push_back({.name = query.text(0), .fasteners = storedMarks(query.text(1))});
  return services;
}

void JobTable::add(const JobEvent& event, const EntryStamp& stamp) {
  if (event.kind == JobEventKind::Opened) {
    Statement(database_, "INSERT INTO job (id, vehicle) VALUES (?, ?) ON CONFLICT (id) DO NOTHING")
        .run(event.job, event.vehicle);
  }
  const auto entry = ledger_.append(stamp, "job", jobEventFacts(event));
  Statement(
      database_,
      "INSERT INTO job_event (entry, job, event, date, service, fasteners, done_by, note) VALUES (?, ?, ?, ?, ?, "
      "?, ?, ?)")
      .run(entry, event.job, eventText(event.kind), writeDate(event.date), event.service, marksText(event.fasteners),
           event.by, event.note);
}

std::optional<JobRecord> JobTable::find(const std::string& id) const {
  Statement job(database_, "SELECT vehicle FROM job WHERE id = ?");
  if (!job.run(id).next()) return std::nullopt;
  JobRecord found{.id = id, .vehicle = job.text(0), .opened = {}, .closed = {}};
  Statement events(database_, std::string(eventColumns) + " WHERE e.job = ? ORDER BY e.entry");
  events.run(id);
  while (events.next()) {
    auto event = eventOf(events);
    (event.kind == JobEventKind::Opened ? found.opened : found.closed) = std::move(event);
  }
  return found;
}

std::vector<JobRecord> JobTable::open() const {
  Statement events(database_, std::string(eventColumns) +
                                  " WHERE e.event = 'opened' AND NOT EXISTS (SELECT 1 FROM job_event c WHERE c.job = "
                                  "e.job AND c.event = 'closed') ORDER BY e.date DESC, e.entry DESC");
  events.run();
  std::vector<JobRecord> jobs;
  while (events.next()) {
    auto event = eventOf(events);
    jobs.push_back({.id = event.job, .vehicle = event.vehicle, .opened = event, .closed = {}});
  }
  return jobs;
}

ProvenRows JobTable::proven() const {
  const RecordKind kind{.kind = "job", .name = {{"job", "job", 0}, {"as", "event", 1}}};
  return {database_, kind, std::string(eventColumns) + " ORDER BY e.entry", 8,
          [](const Statement& row) { return ProvenFacts{.facts = jobEventFacts(eventOf(row))}; }};
}

ProvenRows JobTable::provenServices() const {
  const RecordKind kind{.kind = "service", .name = {{"service", "name", 0}}};
  return {database_, kind, "SELECT name, fasteners, entry FROM service_list ORDER BY entry", 2,
          [](const Statement& row) {
            return ProvenFacts{.facts = serviceFacts({.name = row.text(0), .fasteners = storedMarks(row.text(1))})};
          }};
}

}  // namespace steadyturn
