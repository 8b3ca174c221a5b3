// One tool's history at one set-point: its checks, its drift, what else happened to it and how much it was used.
#include <algorithm>
#include <cmath>

#include "inside.h"
#include "standing.h"
#include "walk_tools.h"

namespace steadyturn {

namespace {

HistoryEvent eventOf(const DatedStatus& event) {
  const std::string because = event.reason.empty() ? "" : ": " + event.reason;
  switch (event.status) {
    case ToolStatus::Held:
      return {event.date, HistoryEventKind::Held, writeDate(event.date) + ", held" + because};
    case ToolStatus::Retired:
      return {event.date, HistoryEventKind::Retired, writeDate(event.date) + ", retired" + because};
    case ToolStatus::InService:
      break;
  }
  return {event.date, HistoryEventKind::Released, writeDate(event.date) + ", released" + because};
}

// A check whose reference nobody wrote down tells no change.
void addReferenceChanges(std::vector<HistoryEvent>& events, const std::vector<CheckTable::ReferenceUse>& uses) {
  std::string before;
  for (const auto& use : uses) {
    if (use.reference.empty()) continue;
    if (!before.empty() && use.reference != before) {
      events.push_back({use.date, HistoryEventKind::ReferenceChanged,
                        writeDate(use.date) + ", checked with " + use.reference + ", before with " + before});
    }
    before = use.reference;
  }
}

std::vector<HistoryEvent> eventsOf(const Shop::Inside& inside, const std::string& tool, Date asOf) {
  std::vector<HistoryEvent> events;
  for (const auto& event : inside.tools.statusEvents(tool)) events.push_back(eventOf(event));
  addReferenceChanges(events, inside.checks.referencesOf(tool));
  std::erase_if(events, [asOf](const HistoryEvent& event) { return event.date > asOf; });
  std::ranges::stable_sort(events, {}, &HistoryEvent::date);
  return events;
}

std::vector<UseCount> usesOf(const TighteningTable& tightenings, const std::string& tool, Date asOf) {
  std::vector<UseCount> uses;
  std::int64_t sum = 0;
  for (const auto& day : tightenings.countedByDay(tool, asOf)) {
    sum += day.tightenings;
    uses.push_back({day.date, sum});
  }
  return uses;
}

HistoryData historyOf(const Tool& tool, const DriftSeries& series, Date asOf, const Policy& policy) {
  HistoryData data{.tool = tool,
                   .target = series.target,
                   .points = series.points,
                   .limitPercent = tool.permittedPercent(),
                   .confidence = policy.confidence,
                   .asOf = asOf,
                   .intervalDays = tool.intervalDays.value_or(policy.intervalDays),
                   .drift = series.drift};
  if (!series.points.empty()) data.forecast = {.fleet = series.fleet, .outlook = series.outlook};
  return data;
}

// As many straight pieces as a chart of that size can show of the curve.
constexpr int largePieces = 48, smallPieces = 8;

void addPath(HistoryData& data, const FleetBook& book, Direction direction, Date until, int pieces) {
  if (!isBorrowed(data)) return;
  const auto place = book.find(data.tool.id, data.target, direction);
  if (!place) return;
  const PointSummary& newest = data.points.back();
  data.forecast->path =
      forecastPath(*place->fleet, place->member, data.forecast->outlook.basis,
                   {.date = newest.date, .phase = newest.phase, .deviationPercent = newest.meanDeviation},
                   {.asOf = data.asOf,
                    .limitPercent = data.limitPercent,
                    .confidence = data.confidence,
                    .intervalDays = data.intervalDays},
                   until, pieces);
}

FleetStory storyOf(const ToolDrift& drift, const std::vector<PointSummary>& summaries, const FleetBook& book,
                   Date asOf, const Policy& policy) {
  const DriftSeries never{};
  const auto& series = drift.series.empty() ? never : drift.series[drift.worst];
  FleetStory story{.history = historyOf(drift.tool, series, asOf, policy),
                   .standing = overviewOf(drift, summaries, asOf).standing};
  addPath(story.history, book, series.direction, asOf, smallPieces);
  return story;
}

// How much of its limit a tool has used up: what decides between tools of one standing.
double usedUp(const HistoryData& history) {
  const double expected = history.forecast ? history.forecast->outlook.deviationPercent : 0;
  return std::abs(expected) / history.limitPercent;
}

bool worse(const FleetStory& a, const FleetStory& b) {
  if (a.standing != b.standing) return a.standing < b.standing;
  return usedUp(a.history) > usedUp(b.history);
}

}  // namespace

Result<std::vector<FleetStory>> Shop::fleet(Date asOf, const Progress& progress) const {
  return guarded([&]() -> Result<std::vector<FleetStory>> {
    const auto policy = inside_->policy();
    const auto tools = inside_->tools.all();
    const auto all = inside_->checks.allSummaries();
    const auto& book = inside_->fleets.book(all, asOf, policy.confidence);
    std::vector<FleetStory> fleet;
    const bool whole = walkTools(tools, all, progress, [&](const Tool& tool, const std::vector<PointSummary>& own) {
      if (tool.status == ToolStatus::Retired) return;
      fleet.push_back(storyOf(driftOf(tool, own, book, asOf, policy), own, book, asOf, policy));
    });
    if (!whole) return refuse({.kind = ProblemKind::Cancelled});
    std::ranges::stable_sort(fleet, worse);
    return fleet;
  });
}

Result<std::vector<HistoryData>> Shop::histories(const std::string& id, Date asOf) const {
  const auto found = drift(id, asOf);
  if (!found) return tl::unexpected(found.error());
  return guarded([&]() -> Result<std::vector<HistoryData>> {
    std::vector<HistoryData> all;
    const FleetBook& book = inside_->fleetBook(asOf);
    for (const auto& series : found->series) {
      all.push_back(historyOf(found->tool, series, asOf, inside_->policy()));
      addPath(all.back(), book, series.direction, asOf, smallPieces);
    }
    return all;
  });
}

Result<HistoryData> Shop::history(const std::string& id, std::optional<StatedTorque> target, Date asOf) const {
  const auto found = drift(id, asOf);
  if (!found) return tl::unexpected(found.error());
  if (found->series.empty()) {
    return refuse({.kind = ProblemKind::NotFound,
                   .field = "tool",
                   .found = id + " has no check on or before " + writeDate(asOf),
                   .accepted = "a tool with at least one check"});
  }
  const auto* series = &found->series[found->worst];
  if (target) {
    // The nearest set-point: a person types 60 where the record says 60.0 or 44.25 lbf·ft.
    const auto distance = [&](const DriftSeries& one) {
      return std::abs(one.target.torque().newtonMetres() - target->torque().newtonMetres());
    };
    series = &*std::min_element(found->series.begin(), found->series.end(),
                                [&](const auto& a, const auto& b) { return distance(a) < distance(b); });
  }
  return guarded([&]() -> Result<HistoryData> {
    auto data = historyOf(found->tool, *series, asOf, inside_->policy());
    addPath(data, inside_->fleetBook(asOf), series->direction, drawnUntil(data), largePieces);
    data.events = eventsOf(*inside_, id, asOf);
    data.uses = usesOf(inside_->tightenings, id, asOf);
    return data;
  });
}

}  // namespace steadyturn
