#include <algorithm>

#include "inside.h"
#include "validate.h"
#include "writing.h"

namespace steadyturn {

namespace {

Problem unknownJob(const std::string& id) {
  return {.kind = ProblemKind::NotFound,
          .field = "job",
          .found = id,
          .accepted = "a job that was opened, or has at least one tightening on record"};
}

Problem conflict(std::string field, std::string found, std::string accepted) {
  return {.kind = ProblemKind::Conflict,
          .field = std::move(field),
          .found = std::move(found),
          .accepted = std::move(accepted)};
}

// Marks that are no fastener of the shop.
Problems unknownIn(const FastenerTable& table, const std::vector<std::string>& fasteners) {
  Problems problems;
  for (const auto& mark : fasteners) {
    if (table.find(mark)) continue;
    problems.push_back({.kind = ProblemKind::NotFound,
                        .field = "fastener",
                        .found = mark,
                        .accepted = "a fastener of this shop; find it by its words, or add it first"});
  }
  return problems;
}

JobSheet sheetOf(const Shop::Inside& shop, JobRecord job) {
  JobSheet sheet{.job = std::move(job), .lines = {}};
  const auto lineOf = [&](const std::string& mark) -> JobLine& {
    const auto known = std::ranges::find(sheet.lines, mark, [](const JobLine& line) { return line.spec.id; });
    if (known != sheet.lines.end()) return *known;
    return sheet.lines.emplace_back(
        JobLine{.spec = shop.fasteners.find(mark).value_or(Fastener{}), .listed = false, .tightenings = {}});
  };
  if (sheet.job.opened) {
    for (const auto& mark : sheet.job.opened->fasteners) lineOf(mark).listed = true;
  }
  for (auto& tightening : shop.tightenings.ofJob(sheet.job.id)) {
    auto& line = lineOf(tightening.fastener);
    if (const auto used = shop.fasteners.find(tightening.fastener, tightening.fastenerNumber)) line.spec = *used;
    line.tightenings.push_back(std::move(tightening));
  }
  return sheet;
}

std::string undoneIn(const JobSheet& sheet) {
  std::string text;
  for (const auto& line : sheet.lines) {
    for (const auto& missing : missingOf(line)) text += (text.empty() ? "" : "; ") + line.spec.id + ": " + missing;
  }
  return text;
}

}  // namespace

Result<void> Shop::setService(const ServiceList& service) {
  Problems problems;
  checkId(problems, "service", service.name);
  if (service.fasteners.empty()) problems.push_back({.field = "fastener", .accepted = "at least one fastener"});
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::SetService);
    if (auto unknown = unknownIn(inside_->fasteners, service.fasteners); !unknown.empty()) {
      return tl::unexpected(std::move(unknown));
    }
    inside_->jobs.setService(service, writing.stamp());
    writing.commit();
    return {};
  });
}

Result<std::vector<ServiceList>> Shop::services() const {
  return guarded([&]() -> Result<std::vector<ServiceList>> { return inside_->jobs.services(); });
}

Result<JobSheet> Shop::openJob(const JobDraft& draft) {
  Problems problems;
  checkId(problems, "job", draft.job);
  if (draft.vehicle.empty()) problems.push_back({.field = "vehicle", .accepted = "the vehicle that the job is for"});
  checkText(problems, "vehicle", draft.vehicle);
  checkText(problems, "by", draft.by);
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<JobSheet> {
    Writing writing(*inside_, Act::WorkJob);
    if (inside_->jobs.find(draft.job)) {
      return refuse(conflict("job", draft.job, "a number that no job of this shop has yet"));
    }
    JobEvent event{.kind = JobEventKind::Opened,
                   .job = draft.job,
                   .vehicle = draft.vehicle,
                   .date = draft.date,
                   .service = draft.service,
                   .fasteners = draft.fasteners,
                   .by = inside_->doer(draft.by),
                   .note = {}};
    if (!draft.service.empty()) {
      const auto service = inside_->jobs.service(draft.service);
      if (!service) {
        return refuse({.kind = ProblemKind::NotFound,
                       .field = "service",
                       .found = draft.service,
                       .accepted = "a service of this shop; list them, or set one first"});
      }
      event.fasteners.insert(event.fasteners.begin(), service->fasteners.begin(), service->fasteners.end());
    }
    if (auto unknown = unknownIn(inside_->fasteners, event.fasteners); !unknown.empty()) {
      return tl::unexpected(std::move(unknown));
    }
    inside_->jobs.add(event, writing.stamp());
    writing.commit();
    return sheetOf(*inside_, *inside_->jobs.find(draft.job));
  });
}

Result<JobSheet> Shop::jobSheet(const std::string& id) const {
  return guarded([&]() -> Result<JobSheet> {
    auto job = inside_->jobs.find(id);
    if (!job) return refuse(unknownJob(id));
    return sheetOf(*inside_, std::move(*job));
  });
}

Result<JobSheetData> Shop::jobSheetData(const std::string& id) const {
  auto sheet = jobSheet(id);
  if (!sheet) return tl::unexpected(sheet.error());
  return JobSheetData{
      .shopName = facts().name, .shopPlace = facts().place, .issued = today(), .sheet = std::move(*sheet)};
}

Result<std::vector<JobRecord>> Shop::openJobs() const {
  return guarded([&]() -> Result<std::vector<JobRecord>> { return inside_->jobs.open(); });
}

Result<JobSheet> Shop::closeJob(const std::string& id, Date date, const std::string& by, const std::string& reason) {
  Problems problems;
  checkText(problems, "by", by);
  checkText(problems, "reason", reason);
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<JobSheet> {
    Writing writing(*inside_, Act::WorkJob);
    const auto job = inside_->jobs.find(id);
    if (!job) return refuse(unknownJob(id));
    if (job->closed) {
      return refuse(conflict("job", id + " was closed on " + writeDate(job->closed->date), "a job that is open"));
    }
    if (const auto undone = undoneIn(sheetOf(*inside_, *job)); !undone.empty() && reason.empty()) {
      return refuse(conflict("job", undone, "everything done and seen, or a reason for closing it as it is"));
    }
    inside_->jobs.add({.kind = JobEventKind::Closed,
                       .job = id,
                       .vehicle = job->vehicle,
                       .date = date,
                       .service = {},
                       .fasteners = {},
                       .by = inside_->doer(by),
                       .note = reason},
                      writing.stamp());
    writing.commit();
    return sheetOf(*inside_, *inside_->jobs.find(id));
  });
}

}  // namespace steadyturn
