// After a failed check: what it puts in doubt, what is decided about each, and the closing of the recall.
#include <algorithm>

#include "inside.h"
#include "shop_people.h"
#include "validate.h"
#include "writing.h"

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

void addDecisions(RecallList& list, const RecallTable& recalls) {
  for (const auto& decision : recalls.decisions(list.failedCheck)) {
    const auto entry = std::ranges::find(list.tightenings, decision.tightening,
                                         [](const RecallLine& one) { return one.tightening.id; });
    if (entry != list.tightenings.end()) entry->decision = decision;
  }
  list.closing = recalls.closing(list.failedCheck);
}

Problem recallConflict(std::string found, std::string accepted) {
  return {
      .kind = ProblemKind::Conflict, .field = "recall", .found = std::move(found), .accepted = std::move(accepted)};
}

// What speaks against writing anything to this recall.
std::optional<Problem> notOpen(const RecallList& list) {
  if (list.failedCheck == 0) {
    return recallConflict(list.tool + " has no failed check",
                          "a tool whose newest failed check puts something in doubt");
  }
  if (list.closing) {
    return recallConflict(
        "the recall of check " + std::to_string(list.failedCheck) + " was closed on " + writeDate(list.closing->date),
        "a recall that is open");
  }
  return std::nullopt;
}

Problems problemsOf(const RecallChoice& choice) {
  Problems problems;
  checkText(problems, "reason", choice.reason);
  checkText(problems, "by", choice.by);
  if (choice.action == RecallAction::Accept && choice.reason.empty()) {
    problems.push_back({.field = "reason", .accepted = "why this tightening may stay as it is"});
  }
  return problems;
}

}  // namespace

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
    list.failedCheck = failure->bad;
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
                     [](const RecallLine& a, const RecallLine& b) { return worseThan(a.result, b.result); });
    addDecisions(list, inside_->recalls);
    return list;
  });
}

Result<RecallReportData> Shop::recallReport(const std::string& id) const {
  auto list = recall(id);
  if (!list) return tl::unexpected(list.error());
  const auto found = tool(id);
  if (!found) return tl::unexpected(found.error());
  if (!list->foundBad) {
    return refuse({.kind = ProblemKind::NotFound,
                   .field = "tool",
                   .found = id + " has no failed check",
                   .accepted = "a tool whose failed check puts something in doubt"});
  }
  const auto shop = facts();
  return RecallReportData{.shopName = shop.name,
                          .shopPlace = shop.place,
                          .tool = *found,
                          .lastGood = list->lastGood,
                          .foundBad = *list->foundBad,
                          .failedCheck = list->failedCheck,
                          .lines = std::move(list->tightenings),
                          .closing = list->closing,
                          .issued = today()};
}

Result<RecallList> Shop::decideRecall(const std::string& tool, const RecallChoice& typed) {
  if (auto allowed = may(*this, Act::DecideRecall); !allowed) return tl::unexpected(allowed.error());
  auto choice = typed;
  choice.by = inside_->doer(typed.by);
  if (auto problems = problemsOf(choice); !problems.empty()) return tl::unexpected(std::move(problems));
  const auto list = recall(tool);
  if (!list) return list;
  if (const auto problem = notOpen(*list)) return refuse(*problem);
  const bool inDoubt = std::ranges::any_of(
      list->tightenings, [&](const RecallLine& entry) { return entry.tightening.id == choice.tightening; });
  if (!inDoubt) {
    return refuse({.kind = ProblemKind::NotFound,
                   .field = "tightening",
                   .found = std::to_string(choice.tightening),
                   .accepted = "the number of a tightening that this recall lists"});
  }
  const auto done = guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::DecideRecall);
    inside_->recalls.add({.failedCheck = list->failedCheck,
                          .tightening = choice.tightening,
                          .action = choice.action,
                          .reason = choice.reason,
                          .date = today(),
                          .by = choice.by},
                         writing.stamp());
    writing.commit();
    return {};
  });
  if (!done) return tl::unexpected(done.error());
  return recall(tool);
}

Result<RecallList> Shop::closeRecall(const std::string& tool, const std::string& typedBy, const std::string& note) {
  if (auto allowed = may(*this, Act::DecideRecall); !allowed) return tl::unexpected(allowed.error());
  const auto& by = inside_->doer(typedBy);
  Problems problems;
  checkText(problems, "by", by);
  checkText(problems, "note", note);
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  const auto list = recall(tool);
  if (!list) return list;
  if (const auto problem = notOpen(*list)) return refuse(*problem);
  if (const int open = list->undecided(); open > 0) {
    return refuse(recallConflict(
        std::to_string(open) + " of " + std::to_string(list->tightenings.size()) + " tightenings are undecided",
        "a decision about each: accept, re-torque or replace-part"));
  }
  const auto done = guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::DecideRecall);
    inside_->recalls.close({.failedCheck = list->failedCheck,
                            .tightenings = static_cast<int>(list->tightenings.size()),
                            .date = today(),
                            .by = by,
                            .note = note},
                           writing.stamp());
    writing.commit();
    return {};
  });
  if (!done) return tl::unexpected(done.error());
  return recall(tool);
}

}  // namespace steadyturn
