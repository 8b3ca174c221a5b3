// soak --minutes N [--clients N]: many clients record checks and tightenings in one shop on a server while their
// connections are broken at random. What was acknowledged is there, once, and nothing else is. Run by tests/soak.
#include <CLI/CLI.hpp>
#include <QCoreApplication>
#include <algorithm>
#include <atomic>
#include <chrono>
#include <cstdio>
#include <random>
#include <span>
#include <thread>

#include "crash_shop.h"
#include "shop_proof.h"
#include "test_server.h"

namespace {

using namespace steadyturn;
using Clock = std::chrono::steady_clock;

// What one client saw.
struct Client {
  std::int64_t checks = 0, tightenings = 0;  // acknowledged
  std::int64_t unknown = 0;                  // the program said that it can't tell
  std::int64_t refused = 0;                  // nothing saved, and told so
  std::vector<std::string> surprises;        // anything else
  std::vector<double> milliseconds;          // of what was acknowledged
};

Tightening tighteningOf(int client, int number) {
  Tightening done;
  done.job = "J-" + std::to_string(client) + "-" + std::to_string(number);
  done.vehicle = "van " + std::to_string(client);
  done.date = firstDay;
  done.fastener = "F1";
  done.tool = "T1";
  done.setting = "60";
  done.unit = Unit::NewtonMetre;
  done.by = "Nora";
  return done;
}

// What a person reads when the connection broke; the rest is a surprise.
void tally(Client& client, const Problems& problems) {
  const auto& problem = problems.front();
  if (problem.accepted.find("look whether this is there") != std::string::npos) {
    ++client.unknown;
  } else if (problem.kind == ProblemKind::Unavailable) {
    ++client.refused;
  } else {
    client.surprises.push_back(problem.found + ": " + problem.accepted);
  }
}

// Each client has days of its own: a tool has one check of a kind a day.
void work(const std::string& address, int clients, int number, Clock::time_point end, Client& client) {
  auto shop = Shop::open(address);
  for (int i = 0; Clock::now() < end; ++i) {
    if (!shop) {
      // Broken while it was opening.
      shop = Shop::open(address);
      continue;
    }
    const auto start = Clock::now();
    const bool check = i % 2 == 0;
    bool done = false;
    if (check) {
      const auto recorded = shop->recordCheck(checkOfDay(i / 2 * clients + number));
      done = recorded.has_value();
      if (!done) tally(client, recorded.error());
    } else {
      const auto recorded = shop->recordTightening(tighteningOf(number, i));
      done = recorded.has_value();
      if (!done) tally(client, recorded.error());
    }
    if (!done) continue;
    ++(check ? client.checks : client.tightenings);
    client.milliseconds.push_back(std::chrono::duration<double, std::milli>(Clock::now() - start).count());
  }
}

// Breaks one connection after the other, never its own.
std::int64_t breakConnections(const std::string& address, Clock::time_point end) {
  std::mt19937 chance(20261126);
  std::uniform_int_distribution<int> pause(20, 400);
  std::int64_t broken = 0;
  while (Clock::now() < end) {
    std::this_thread::sleep_for(std::chrono::milliseconds(pause(chance)));
    if (sayToServer(address,
                    "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND "
                    "application_name = 'steadyturn' AND pid <> pg_backend_pid() ORDER BY random() LIMIT 1")
            .empty())
      ++broken;
  }
  return broken;
}

std::string freshShop() {
  const auto address = freshDatabase();
  auto shop = Shop::create(address, "Soak").value();
  fill(shop);
  Fastener fastener;
  fastener.id = "F1";
  fastener.component = "wheel nut";
  fastener.target = 60;
  fastener.unit = Unit::NewtonMetre;
  (void)shop.addFastener(fastener);
  // No tightening with a tool that was never checked.
  auto first = checkOfDay(0);
  first.phase = Phase::AsLeft;
  (void)shop.recordCheck(first);
  return address;
}

struct Counted {
  std::int64_t checks = 0, tightenings = 0;
};

Counted countEntries(const Shop& shop) {
  Counted counted;
  counted.checks = -1;  // the one that the shop began with
  (void)walkLedger(shop, [&](std::string_view entry) {
    if (entry.find(R"("kind":"check")") != std::string_view::npos) ++counted.checks;
    if (entry.find(R"("kind":"tightening")") != std::string_view::npos) ++counted.tightenings;
    return true;
  });
  return counted;
}

double quantile(const std::vector<double>& sorted, double part) {
  return sorted.empty() ? 0 : sorted[static_cast<std::size_t>(part * static_cast<double>(sorted.size() - 1))];
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  CLI::App line("Many clients on one server while their connections are broken");
  double minutes = 1;
  int clients = 20;
  line.add_option("--minutes", minutes, "How long")->check(CLI::PositiveNumber);
  line.add_option("--clients", clients, "How many")->check(CLI::Range(1, 50));
  CLI11_PARSE(line, argc, argv);
  if (!hasTestServer()) {
    std::fputs("no server: run tests/soak\n", stderr);
    return 64;
  }
  const auto address = freshShop();
  const auto start = Clock::now();
  const auto end =
      start + std::chrono::duration_cast<Clock::duration>(std::chrono::duration<double, std::ratio<60>>(minutes));
  std::vector<Client> seen(static_cast<std::size_t>(clients));
  std::vector<std::thread> threads;
  for (int i = 0; i < clients; ++i) {
    threads.emplace_back([&, i] { work(address, clients, i, end, seen[static_cast<std::size_t>(i)]); });
  }
  const auto broken = breakConnections(address, end);
  for (auto& thread : threads) thread.join();
  const double seconds = std::chrono::duration<double>(Clock::now() - start).count();

  Client all;
  for (const auto& client : seen) {
    all.checks += client.checks;
    all.tightenings += client.tightenings;
    all.unknown += client.unknown;
    all.refused += client.refused;
    all.surprises.insert(all.surprises.end(), client.surprises.begin(), client.surprises.end());
    all.milliseconds.insert(all.milliseconds.end(), client.milliseconds.begin(), client.milliseconds.end());
  }
  std::ranges::sort(all.milliseconds);
  const auto shop = Shop::open(address).value();
  const auto written = countEntries(shop);
  const auto proof = verifyShop(shop);
  const auto acknowledged = all.checks + all.tightenings;
  const auto entries = written.checks + written.tightenings;
  std::printf("%d clients, %.0f s, %lld connections broken\n", clients, seconds, static_cast<long long>(broken));
  std::printf(
      "acknowledged: %lld checks, %lld tightenings (%.1f a second); told that nothing was saved: %lld; told "
      "that it is not known: %lld\n",
      static_cast<long long>(all.checks), static_cast<long long>(all.tightenings),
      static_cast<double>(acknowledged) / seconds, static_cast<long long>(all.refused),
      static_cast<long long>(all.unknown));
  std::printf("entries written: %lld checks, %lld tightenings\n", static_cast<long long>(written.checks),
              static_cast<long long>(written.tightenings));
  std::printf("latency of what was acknowledged: median %.1f ms, p99 %.1f ms, longest %.1f ms\n",
              quantile(all.milliseconds, 0.5), quantile(all.milliseconds, 0.99), quantile(all.milliseconds, 1));
  constexpr std::size_t mostTold = 10;
  std::printf("unexpected: %zu\n", all.surprises.size());
  for (const auto& surprise : std::span(all.surprises).first(std::min(mostTold, all.surprises.size())))
    std::printf("  %s\n", surprise.c_str());
  const bool intact = proof && proof->intact();
  std::printf("the log is %s, %lld entries\n", intact ? "intact" : "DAMAGED",
              proof ? static_cast<long long>(proof->entries) : 0LL);
  // What a program could not tell of may be there or not; everything else is exact.
  const bool exact = entries >= acknowledged && entries <= acknowledged + all.unknown;
  std::printf("entries written %s entries acknowledged\n",
              exact ? (all.unknown == 0 ? "=" : "within the unknown of") : "DIFFER FROM");
  return intact && exact && all.surprises.empty() && broken > 0 && acknowledged > 0 ? 0 : 1;
}
