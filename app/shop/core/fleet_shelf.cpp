#include "fleet_shelf.h"

#include <algorithm>

namespace steadyturn {

std::map<std::string, std::string> namedGroups(const ShopTable& facts) {
  auto groups = facts.settingsBelow(toolGroupSetting);
  std::erase_if(groups, [](const auto& one) { return one.second.empty(); });
  return groups;
}

// Facts of a tool never change once it is there, and evidence only grows, so counts tell whether anything is new.
bool FleetShelf::isCurrent(Date asOf, double confidence) const {
  if (!book_ || taken_ != std::tuple(asOf, confidence, tools_.count(), checks_.newestId())) return false;
  if (named_ != namedGroups(facts_)) return false;
  return !book_->goesByTightenings() || newestTightening_ == tightenings_.newestId();
}

template <typename Feed>
const FleetBook& FleetShelf::gather(Date asOf, double confidence, Feed&& feed) {
  if (isCurrent(asOf, confidence)) return *book_;
  newestTightening_ = tightenings_.newestId();
  const auto tools = tools_.all();
  auto book = std::make_unique<FleetBook>(tools, confidence);
  named_ = namedGroups(facts_);
  for (const auto& [tool, group] : named_) book->name(tool, group);
  tightenings_.forEachDaysCount(asOf, [&](const std::string& tool, Date day, std::int64_t tightenings) {
    book->count(tool, day, tightenings);
  });
  std::int64_t newestCheck = 0;  // that was read: one written meanwhile makes the book stale, not wrong
  feed([&](const PointSummary& point) {
    newestCheck = std::max(newestCheck, point.check);
    if (point.date <= asOf) book->add(point);
  });
  book->settle(asOf);
  book_ = std::move(book);
  taken_ = {asOf, confidence, tools.size(), newestCheck};
  return *book_;
}

const FleetBook& FleetShelf::book(Date asOf, double confidence) {
  return gather(asOf, confidence, [this](const auto& take) { checks_.forEachSummary(take); });
}

const FleetBook& FleetShelf::book(const std::vector<PointSummary>& all, Date asOf, double confidence) {
  return gather(asOf, confidence, [&](const auto& take) {
    for (const PointSummary& point : all) take(point);
  });
}

}  // namespace steadyturn
