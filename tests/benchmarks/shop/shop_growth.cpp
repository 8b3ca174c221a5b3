// What a larger shop costs: one tool's history beside 10 and beside 1,000 tools, the first such history after
// opening, and the state of all tools, for 100 and for 1,000. Prints ratios; the goals are a history that does not
// grow with the rest of the shop, and at most 11 times for ten times the fleet.
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
double seconds(int times, Action&& action) {
  const auto start = std::chrono::steady_clock::now();
  for (int i = 0; i < times; ++i) action();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count() / times;
}

double median(std::vector<double> values) {
  std::nth_element(values.begin(), values.begin() + static_cast<std::ptrdiff_t>(values.size() / 2), values.end());
  return values[values.size() / 2];
}

// How many times as long the same question takes to the larger shop. Both are asked in turn, each for about as long,
// so that whatever else the machine does falls on both.
template <typename Ask>
double ratio(const Shop& larger, const Shop& smaller, int timesLarger, int timesSmaller, Ask&& ask) {
  std::vector<double> ratios;
  for (int round = 0; round < 9; ++round) {
    const double base = seconds(timesSmaller, [&] { ask(smaller); });
    ratios.push_back(seconds(timesLarger, [&] { ask(larger); }) / base);
  }
  return median(ratios);
}

void history(const Shop& shop) { (void)shop.history("TW-0007", StatedTorque{60, Unit::NewtonMetre}, asOf).value(); }
// The first question to a shop that was just opened gathers every tool's fleet; what follows finds it there.
void firstHistory(const Shop& shop) { history(Shop::open(shop.address()).value()); }
void fleet(const Shop& shop) { (void)shop.overview(asOf).value(); }
void choice(const Shop& shop) { (void)shop.choose("F-1", asOf).value(); }

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  QTemporaryDir folder;
  const auto in = folder.path().toStdString();
  const auto ten = makeLargeShop(in, "ten", 10, checksEach);
  const auto hundred = makeLargeShop(in, "hundred", 100, checksEach);
  const auto thousand = makeLargeShop(in, "thousand", 1000, checksEach);
  fmt::print("history of one tool: {:.2f} x in a shop of 1,000 tools against one of 10\n",
             ratio(thousand, ten, 20, 20, history));
  fmt::print("the first history after opening: {:.2f} x for 1,000 tools against 100; {:.2f} s\n",
             ratio(thousand, hundred, 1, 10, firstHistory), seconds(3, [&] { firstHistory(thousand); }));
  fmt::print("state of all tools: {:.2f} x for 1,000 tools against 100\n", ratio(thousand, hundred, 1, 10, fleet));
  fmt::print("choosing a wrench: {:.2f} x among 1,000 tools against 100\n", ratio(thousand, hundred, 1, 10, choice));
}
