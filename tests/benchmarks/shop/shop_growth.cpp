// What a larger shop costs: one tool's history beside 10 and beside 1,000 tools, and the state of all tools for 100
// and for 1,000. Prints ratios; the goals are a history that does not grow with the rest of the shop, and at most 11
// times for ten times the fleet.
#include <fmt/format.h>

#include <QCoreApplication>
#include <QTemporaryDir>
#include <algorithm>
#include <chrono>
#include <vector>

#include "large_shop.h"

namespace {

using namespace steadyturn;

constexpr int checksEach = 66;  // 1,000 tools × 66 checks × 15 readings: about 1,000,000 readings
constexpr Date asOf = std::chrono::sys_days(std::chrono::year(2026) / 1 / 5);

template <typename Action>
double medianSeconds(int rounds, Action&& action) {
  std::vector<double> times;
  for (int i = 0; i < rounds; ++i) {
    const auto start = std::chrono::steady_clock::now();
    action();
    times.push_back(std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count());
  }
  std::nth_element(times.begin(), times.begin() + rounds / 2, times.end());
  return times[static_cast<std::size_t>(rounds / 2)];
}

double history(const Shop& shop) {
  return medianSeconds(41, [&] { (void)shop.history("TW-0007", StatedTorque{60, Unit::NewtonMetre}, asOf).value(); });
}

double fleet(const Shop& shop) {
  return medianSeconds(5, [&] { (void)shop.overview(asOf).value(); });
}

double choice(const Shop& shop) {
  return medianSeconds(5, [&] { (void)shop.choose("F-1", asOf).value(); });
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  QTemporaryDir folder;
  const auto in = folder.path().toStdString();
  const auto ten = makeLargeShop(in, "ten", 10, checksEach);
  const auto hundred = makeLargeShop(in, "hundred", 100, checksEach);
  const auto thousand = makeLargeShop(in, "thousand", 1000, checksEach);
  const double small = history(ten);
  const double large = history(thousand);
  fmt::print("history of one tool: {:.2f} x in a shop of 1,000 tools against one of 10\n", large / small);
  fmt::print("state of all tools: {:.2f} x for 1,000 tools against 100\n", fleet(thousand) / fleet(hundred));
  fmt::print("choosing a wrench: {:.2f} x among 1,000 tools against 100\n", choice(thousand) / choice(hundred));
}
