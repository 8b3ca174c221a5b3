// The sheet of a job: a vehicle, what is to be tightened on it, and what was done.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records.h"

namespace steadyturn {

// A list that a shop makes for a service: "oil and filter, type B van".
struct ServiceList {
  std::string name;
  std::vector<std::string> fasteners;  // in the order of the work
  bool operator==(const ServiceList&) const = default;
};

enum class JobEventKind { Opened, Closed };
struct JobEvent {
  JobEventKind kind = JobEventKind::Opened;
  std::string job, vehicle;
  Date date{};
  std::string service;                 // empty: without a list
  std::vector<std::string> fasteners;  // as the list said on that day; empty when closed
  std::string by;
  std::string note;  // on closing: why something was left undone
};

struct JobRecord {
  std::string id, vehicle;
  std::optional<JobEvent> opened;  // absent: its first tightening began it
  std::optional<JobEvent> closed;
};

// One fastener of a job: what is wanted of it, and what was done. `spec` is the revision last used, or the newest.
struct JobLine {
  Fastener spec;
  bool listed = false;  // the service asks for it
  std::vector<Tightening> tightenings;
};

struct JobSheet {
  JobRecord job;
  std::vector<JobLine> lines;  // as listed, then what was done besides
};

// What a line still lacks, in words: "not tightened", "seat not seen", "seal not renewed", "1 of 2 stages".
std::vector<std::string> missingOf(const JobLine& line);

}  // namespace steadyturn
