#include <fmt/format.h>

#include <algorithm>
#include <array>
#include <cmath>

#include "demo_parts.h"
#include "demo_random.h"

namespace steadyturn {

namespace {

constexpr int wanted = 300;
constexpr Date firstDay = std::chrono::sys_days(std::chrono::year(2021) / 3 / 15);
constexpr std::array teams{"hall 1, team north", "hall 1, team south", "hall 2"};

struct Usual {
  double reach;  // N·m up to which this wrench is usually taken
  const char* tool;
  double step;  // graduation
};
constexpr std::array usual{Usual{4, "W02", 0.05}, Usual{10, "W01", 0.1}, Usual{25, "W04", 0.25},
                           Usual{55, "W06", 0.5}, Usual{100, "W08", 1},  Usual{195, "W11", 1},
                           Usual{300, "W13", 2},  Usual{900, "W16", 5}};

const Usual& wrenchFor(double target) {
  return *std::find_if(usual.begin(), usual.end(), [&](const Usual& one) { return target <= one.reach; });
}

// What one visit tightens, by component.
constexpr std::array oilService{"oil drain plug", "oil filter housing cover", "drain plug in the oil filter cover",
                                "air filter cover screw"};
constexpr std::array wheelsAndBrakes{"wheel nut", "wheel nut", "front brake bracket bolt",
                                     "front brake bracket bolt"};

}  // namespace

std::vector<Tightening> demoTightenings(const std::vector<Fastener>& fasteners) {
  std::vector<Tightening> tightenings;
  DemoRandom random(17025);
  Date date = firstDay;
  for (int job = 1; static_cast<int>(tightenings.size()) < wanted; ++job) {
    const auto& assembly = fasteners[10 * static_cast<std::size_t>(random.below(8))].assembly;
    const auto& list = random.below(2) == 0 ? oilService : wheelsAndBrakes;
    const auto vehicle = fmt::format("{} {}", assembly, 1 + random.below(6));
    const auto* by = teams.at(static_cast<std::size_t>(random.below(3)));
    for (const auto* component : list) {
      const auto found = std::find_if(fasteners.begin(), fasteners.end(), [&](const Fastener& one) {
        return one.assembly == assembly && one.component == component;
      });
      const auto& wrench = wrenchFor(found->target);
      tightenings.push_back({.id = 0,
                             .job = fmt::format("J{:04}", job),
                             .vehicle = vehicle,
                             .date = date,
                             .fastener = found->id,
                             .fastenerNumber = found->number,
                             .tool = wrench.tool,
                             .setting = writeNumber(std::round(found->target / wrench.step) * wrench.step),
                             .unit = found->unit,
                             .seatChecked = found->seal.empty() ? std::nullopt : std::optional(random.below(20) != 0),
                             .by = by});
    }
    date += std::chrono::days(19 + random.below(17));
  }
  return tightenings;
}

}  // namespace steadyturn
