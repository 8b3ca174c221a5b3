// The shop's fleets as of the day last asked for, kept while no check, tool, group or (where wear goes by use)
// tightening has come since: gathering them reads every check of the shop.
#pragma once

#include <memory>
#include <tuple>

#include "check_table.h"
#include "fleet_book.h"
#include "shop_table.h"
#include "tightening_table.h"
#include "tool_table.h"

namespace steadyturn {

class FleetShelf {
 public:
  // REQUIRES: the tables outlive the shelf.
  FleetShelf(const ShopTable& facts, const ToolTable& tools, const CheckTable& checks,
             const TighteningTable& tightenings)
      : facts_(facts), tools_(tools), checks_(checks), tightenings_(tightenings) {}

  // Valid until the next call.
  const FleetBook& book(Date asOf, double confidence);
  // The same from summaries that were read already: all the shop's, in the store's order.
  const FleetBook& book(const std::vector<PointSummary>& all, Date asOf, double confidence);

 private:
  bool isCurrent(Date asOf, double confidence) const;
  template <typename Feed>
  const FleetBook& gather(Date asOf, double confidence, Feed&& feed);

  const ShopTable& facts_;
  const ToolTable& tools_;
  const CheckTable& checks_;
  const TighteningTable& tightenings_;
  std::unique_ptr<FleetBook> book_;
  std::tuple<Date, double, std::size_t, std::int64_t> taken_{};  // day, confidence, tools, newest check
  std::map<std::string, std::string> named_;                     // the shop's own groups, by tool
  std::int64_t newestTightening_ = 0;
};

// How the shop's settings name a tool's own group.
inline const std::string toolGroupSetting = "fleet_group.";
// By tool; a name that was taken back is left out.
std::map<std::string, std::string> namedGroups(const ShopTable& facts);

}  // namespace steadyturn
