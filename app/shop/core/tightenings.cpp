#include "inside.h"
#include "standing.h"
#include "validate.h"
#include "writing.h"

namespace steadyturn {

Result<Tightening> Shop::recordTightening(const Tightening& typed) {
  if (auto problems = problemsOf(typed); !problems.empty()) return tl::unexpected(problems);
  const auto usedFastener = fastener(typed.fastener);
  if (!usedFastener) return tl::unexpected(usedFastener.error());
  const auto usedDrift = drift(typed.tool, typed.date);
  if (!usedDrift) return tl::unexpected(usedDrift.error());
  const auto steps = static_cast<int>(usedFastener->steps().size());
  if (typed.stagesDone && (*typed.stagesDone < 0 || *typed.stagesDone > steps)) {
    return refuse({.field = "stages_done",
                   .found = std::to_string(*typed.stagesDone),
                   .accepted = "0 to " + std::to_string(steps) + ", the stages of " + typed.fastener});
  }
  return guarded([&]() -> Result<Tightening> {
    const auto standing = overviewOf(*usedDrift, inside_->checks.summaries(typed.tool), typed.date).standing;
    if (standing <= Standing::Overdue) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "tool",
                     .found = typed.tool + " is " + std::string(writeStanding(standing)),
                     .accepted = "a tool in service with a valid check; have it checked at the bench"});
    }
    auto tightening = typed;
    tightening.fastenerNumber = usedFastener->number;
    tightening.by = inside_->doer(typed.by);
    Writing writing(*inside_, Act::RecordTightening);
    if (const auto job = inside_->jobs.find(typed.job)) {
      if (job->closed) {
        return refuse({.kind = ProblemKind::Conflict,
                       .field = "job",
                       .found = typed.job + " was closed on " + writeDate(job->closed->date),
                       .accepted = "a job that is open"});
      }
      if (tightening.vehicle.empty()) tightening.vehicle = job->vehicle;
    }
    tightening.id = inside_->tightenings.add(tightening, writing.stamp());
    writing.commit();
    return tightening;
  });
}

Result<std::vector<Tightening>> Shop::tighteningsOfJob(const std::string& job) const {
  return guarded([&]() -> Result<std::vector<Tightening>> { return inside_->tightenings.ofJob(job); });
}

}  // namespace steadyturn
