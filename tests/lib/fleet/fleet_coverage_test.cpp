// Are the intervals as wide as they should be? Simulated fleets of 20 tools with one to five checks each, unequally
// spaced, some adjusted in between; the next check of every tool is predicted, then drawn.
#include <gtest/gtest.h>

#include <cmath>
#include <random>
#include <vector>

#include "fleet.h"
#include "forecast_score.h"

namespace steadyturn {
namespace {

constexpr int fleets = 1000;
constexpr int toolsPerFleet = 20;
constexpr double permitted = 4;

struct World {
  const char* name;
  double differences;     // standard deviation of tools' slopes, % a year
  double scatter;         // of a check, %
  double adjustedBeyond;  // %; below 0: adjusted at random, one check in four
};

struct Life {
  FleetMember record;
  Date nextDay{};
  double nextFound = 0;
};

class Simulation {
 public:
  explicit Simulation(const World& world) : world_(world) {}

  std::vector<Life> fleet() {
    const double group = 0.3 * normal_(random_);
    std::vector<Life> lives;
    for (int i = 0; i < toolsPerFleet; ++i) lives.push_back(life(group + world_.differences * normal_(random_)));
    return lives;
  }

 private:
  Life life(double slope) {
    Life made;
    double level = normal_(random_);
    Date day = Date(std::chrono::year(2020) / 1 / 1) + std::chrono::days(random_() % 365);
    Date since = day;
    const auto found = [&] {
      return level + slope * static_cast<double>((day - since).count()) / daysPerYear +
             world_.scatter * normal_(random_);
    };
    const auto checks = 1 + random_() % 5;
    for (unsigned long i = 0; i < checks; ++i) {
      const double deviation = found();
      made.record.add({.date = day, .phase = Phase::AsFound, .deviationPercent = deviation});
      if (world_.adjustedBeyond < 0 ? random_() % 4 == 0 : std::abs(deviation) > world_.adjustedBeyond) {
        level = 0.3 * normal_(random_);
        since = day;
        made.record.add({.date = day, .phase = Phase::AsLeft, .deviationPercent = found()});
      }
      day += std::chrono::days(90 + random_() % 450);
    }
    made.nextDay = day;
    made.nextFound = found();
    return made;
  }

  World world_;
  std::mt19937_64 random_{2026};
  std::normal_distribution<double> normal_;
};

struct Study {
  ForecastScore fleet, lastValue, lastValueNarrow, own, fleetWhereOwnSpeaks;
};

Study study(const World& world) {
  Simulation simulation(world);
  Study result;
  for (int i = 0; i < fleets; ++i) {
    const auto lives = simulation.fleet();
    std::vector<FleetMember> members;
    for (const Life& life : lives) members.push_back(life.record);
    const Fleet fleet(members, permitted, 0.95);
    for (std::size_t tool = 0; tool < lives.size(); ++tool) {
      const auto next = fleet.outlook(tool, lives[tool].nextDay).prediction;
      const Forecast forecast{next.mean, next.standardError, next.degreesOfFreedom};
      result.fleet.add(forecast, lives[tool].nextFound);
      result.lastValue.add({members[tool].lastDeviation(), permitted / 2, {}}, lives[tool].nextFound);
      result.lastValueNarrow.add({members[tool].lastDeviation(), permitted / 2 / 1.96, {}}, lives[tool].nextFound);
      const SlopeSums& sums = members[tool].sums(Exposure::Days);
      const int freedom = sums.contrasts() - 1;
      if (freedom < 1) continue;
      const double slope = sums.xy / sums.xx;
      const double dx = members[tool].at(Exposure::Days, lives[tool].nextDay) - sums.newest.x;
      const double error = std::sqrt((sums.yy - slope * sums.xy) / freedom *
                                     (1 + 1 / static_cast<double>(sums.newest.count) + dx * dx / sums.xx));
      result.own.add({sums.newest.y + slope * dx, error, freedom}, lives[tool].nextFound);
      result.fleetWhereOwnSpeaks.add(forecast, lives[tool].nextFound);
    }
  }
  return result;
}

class Coverage : public ::testing::TestWithParam<World> {};

TEST_P(Coverage, IntervalsHoldWhatTheySayAndBeatTheNaiveRules) {
  const Study found = study(GetParam());
  const double coverage = *found.fleet.coverage(2);
  EXPECT_GE(coverage, 0.93);
  EXPECT_LE(coverage, 0.97);
  EXPECT_GT(*found.fleet.meanLogScore(), *found.lastValue.meanLogScore());
  // Read as a 95 % interval, the same rule is half as wide.
  EXPECT_GT(*found.fleet.meanLogScore(), *found.lastValueNarrow.meanLogScore());
  EXPECT_GT(*found.fleetWhereOwnSpeaks.meanLogScore(), *found.own.meanLogScore());
}

INSTANTIATE_TEST_SUITE_P(Worlds, Coverage,
                         ::testing::Values(World{"tools differ", 0.4, 0.3, -1},
                                           World{"tools differ little", 0.1, 0.3, -1},
                                           World{"tools differ much, adjusted when out", 0.8, 0.3, 3.2}),
                         [](const auto& world) { return "World" + std::to_string(world.index); });

}  // namespace
}  // namespace steadyturn
