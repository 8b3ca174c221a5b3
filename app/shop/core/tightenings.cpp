#include <algorithm>

#include "inside.h"
#include "standing.h"
#include "validate.h"

namespace steadyturn {

namespace {

// The failed check that matters and the good one before it, by set-point.
DoubtfulPeriod doubtfulPeriod(const std::vector<PointSummary>& summaries, std::int64_t goodCheck,
                              std::int64_t badCheck) {
  DoubtfulPeriod period;
  for (const auto& point : summaries) {
    if (point.check != goodCheck && point.check != badCheck) continue;
    Uncertainty pull{.standardPercent = point.repeatability.value_or(0), .degreesOfFreedom = {}};
    if (point.repeatability) pull.degreesOfFreedom = point.readings - 1;
    const KnownDeviation known{.target = point.target,
                               .meanDeviationPercent = point.meanDeviation,
                               .pull = pull,
                               .standardUncertaintyPercent = point.standardUncertainty};
    (point.check == goodCheck ? period.good : period.bad).push_back(known);
    (point.check == goodCheck ? period.lastGood : period.foundBad) = point.date;
  }
  for (auto* side : {&period.good, &period.bad}) {
    std::sort(side->begin(), side->end(),
              [](const auto& a, const auto& b) { return a.target.torque() < b.target.torque(); });
  }
  return period;
}

struct FailedCheck {
  Date date{};
  std::int64_t bad = 0;
  std::int64_t good = 0;  // 0: never a good one before
};

// The newest check as found with a set-point that failed, and the last check without one before it.
// REQUIRES: summaries of one direction.
std::optional<FailedCheck> newestFailureOf(const std::vector<PointSummary>& summaries) {
  std::optional<FailedCheck> failure;
  std::int64_t lastGood = 0;
  for (std::size_t i = 0; i < summaries.size();) {
    const auto id = summaries[i].check;
    auto verdict = Verdict::Pass;
    const auto phase = summaries[i].phase;
    const auto date = summaries[i].date;
    for (; i < summaries.size() && summaries[i].check == id; ++i) verdict = std::max(verdict, summaries[i].verdict);
    const bool failed = verdict > Verdict::ConditionalPass;
    if (failed && phase == Phase::AsFound) failure = FailedCheck{.date = date, .bad = id, .good = lastGood};
    if (!failed) lastGood = id;
  }
  return failure;
}

// A good check of one direction says nothing of the other, so each is looked at alone. The later failure counts:
// which way a tightening went is not on record.
std::optional<FailedCheck> newestFailure(const std::vector<PointSummary>& summaries) {
  std::optional<FailedCheck> newest;
  for (const auto direction : {Direction::Clockwise, Direction::Counterclockwise}) {
    std::vector<PointSummary> oneWay;
    std::copy_if(summaries.begin(), summaries.end(), std::back_inserter(oneWay),
                 [&](const PointSummary& point) { return point.direction == direction; });
    const auto failure = newestFailureOf(oneWay);
    if (failure && (!newest || failure->date > newest->date)) newest = failure;
  }
  return newest;
}

Window windowFor(const Fastener& fastener) {
  return windowOf({.target = fastener.targetTorque(),
                   .low = fastener.low ? std::optional(StatedTorque{*fastener.low, fastener.unit}) : std::nullopt,
                   .high = fastener.high ? std::optional(StatedTorque{*fastener.high, fastener.unit}) : std::nullopt,
                   .partLimit = {},
                   .adapter = {}});
}

}  // namespace

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
    Transaction transaction(inside_->database);
    if (const auto job = inside_->jobs.find(typed.job)) {
      if (job->closed) {
        return refuse({.kind = ProblemKind::Conflict,
                       .field = "job",
                       .found = typed.job + " was closed on " + writeDate(job->closed->date),
                       .accepted = "a job that is open"});
      }
      if (tightening.vehicle.empty()) tightening.vehicle = job->vehicle;
    }
    tightening.id = inside_->tightenings.add(tightening, inside_->stamp());
    transaction.commit();
    return tightening;
  });
}

Result<std::vector<Tightening>> Shop::tighteningsOfJob(const std::string& job) const {
  return guarded([&]() -> Result<std::vector<Tightening>> { return inside_->tightenings.ofJob(job); });
}

Result<RecallList> Shop::recall(const std::string& id) const {
  const auto found = tool(id);
  if (!found) return tl::unexpected(found.error());
  return guarded([&]() -> Result<RecallList> {
    RecallList list{.tool = id, .lastGood = {}, .foundBad = {}, .tightenings = {}};
    const auto summaries = inside_->checks.summaries(id);
    const auto failure = newestFailure(summaries);
    if (!failure) return list;
    const auto period = doubtfulPeriod(summaries, failure->good, failure->bad);
    list.foundBad = period.foundBad;
    if (failure->good != 0) list.lastGood = period.lastGood;
    for (const auto& tightening :
         inside_->tightenings.ofTool(id, list.lastGood.value_or(Date::min()), period.foundBad)) {
      const auto spec = inside_->fasteners.find(tightening.fastener, tightening.fastenerNumber);
      if (!spec) continue;  // the store's foreign key forbids it
      const PastTightening past{
          .date = tightening.date,
          .setting = tightening.settingTorque(),
          .window = windowFor(*spec),
          .partLimit = spec->partLimit ? std::optional(StatedTorque{*spec->partLimit, spec->unit}) : std::nullopt,
          .resolution = found->resolutionTorque()};
      list.tightenings.push_back(
          {.tightening = tightening, .fastener = *spec, .result = recallTightening(period, past)});
    }
    std::stable_sort(list.tightenings.begin(), list.tightenings.end(),
                     [](const RecallEntry& a, const RecallEntry& b) { return worseThan(a.result, b.result); });
    return list;
  });
}

}  // namespace steadyturn
