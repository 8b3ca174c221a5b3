// After a failed check: what it puts in doubt, what is decided about each, and the closing of the recall.
#include <algorithm>
#include <cmath>

#include "fleet_assumption.h"
#include "inside.h"
#include "outlook_words.h"
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
  Direction direction = Direction::Clockwise;
  std::int64_t bad = 0;
  std::int64_t good = 0;  // 0: never a good one before
  bool first = false;     // of the tool in this direction
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
    if (failed && phase == Phase::AsFound) {
      failure = FailedCheck{.date = date,
                            .direction = summaries.front().direction,
                            .bad = id,
                            .good = lastGood,
                            .first = id == summaries.front().check};
    }
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

// What the contract leaves open: a tool whose very first check failed has nothing to interpolate from. Its deviation
// on the days before is the failed check's, carried back along the drift of tools like it, as known on the failed
// day.
class BorrowedPast {
 public:
  BorrowedPast(const FleetBook& book, const std::string& tool, const FailedCheck& failure,
               const std::vector<KnownDeviation>& bad)
      : book_(book), tool_(tool), failure_(failure), bad_(bad) {}

  // Absent where a set-point's fleet goes by tightenings and nobody counted the tool's.
  std::optional<std::vector<KnownDeviation>> on(Date day) const {
    std::vector<KnownDeviation> known;
    for (const KnownDeviation& found : bad_) {
      const auto place = book_.find(tool_, found.target, failure_.direction);
      if (!place) return std::nullopt;
      const auto exposure = exposureBack(place->fleet->exposure(), day);
      if (!exposure) return std::nullopt;
      const auto past = outlookBefore(*place->fleet, found.meanDeviationPercent, *exposure);
      known.push_back(found);
      known.back().meanDeviationPercent = past.deviationPercent;
      // The fleet tells how checks scatter; what the failed check's own uncertainty holds besides, it does not know.
      known.back().standardUncertaintyPercent = std::hypot(past.standardError, found.standardUncertaintyPercent);
      known.back().degreesOfFreedom = past.degreesOfFreedom;
    }
    return known;
  }

  std::string words() const {
    const auto place = book_.find(tool_, bad_.front().target, failure_.direction);
    if (!place) return {};
    if (!place->fleet->isEstimated()) {
      return "Before the failed check, assumed, no record yet. " + assumptionText(place->fleet->permittedPercent());
    }
    FleetWord word;
    word.exposure = place->fleet->exposure();
    word.toolsThatSpeak = place->fleet->toolsThatSpeak();
    word.outlook.slope.borrowed = 1;
    return borrowedSentence(OutlookBasis::Fleet, word) + " (" + place->group + "), back from the failed check";
  }

 private:
  std::optional<double> exposureBack(Exposure exposure, Date day) const {
    if (day >= failure_.date) return 0;
    if (exposure == Exposure::Days) return yearsBetween(day, failure_.date);
    const auto until = book_.tighteningsUpTo(tool_, failure_.date);
    const auto then = book_.tighteningsUpTo(tool_, day);
    if (!until || !then) return std::nullopt;
    return (*until - *then) / tighteningsPerInterval;
  }

  const FleetBook& book_;
  const std::string& tool_;
  const FailedCheck& failure_;
  const std::vector<KnownDeviation>& bad_;
};

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
    std::optional<BorrowedPast> borrowed;
    if (failure->first) borrowed.emplace(inside_->fleetBook(failure->date), id, *failure, period.bad);
    if (borrowed) list.borrowed = borrowed->words();
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
      auto result = recallTightening(period, past);
      if (const auto known = borrowed ? borrowed->on(past.date) : std::nullopt) {
        result.byFleet = recallFigure(*known, past);
      }
      list.tightenings.push_back({.tightening = tightening, .fastener = *spec, .result = result});
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
                          .borrowed = list->borrowed,
                          .closing = list->closing,
                          .issued = today()};
}

Result<RecallList> Shop::decideRecall(const std::string& tool, const RecallChoice& typed) {
  if (auto allowed = may(*this, Act::DecideRecall); !allowed) return tl::unexpected(allowed.error());
  auto choice = typed;
  choice.by = inside_->doer(typed.by);
  if (auto problems = problemsOf(choice); !problems.empty()) return tl::unexpected(std::move(problems));
  auto list = recall(tool);
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
  auto list = recall(tool);
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
