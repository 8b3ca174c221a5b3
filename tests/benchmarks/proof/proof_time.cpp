// What an inclusion and a consistency proof cost in ledgers of 1,000 to 1,000,000 entries, and what an entry costs to
// append: the first must grow with the logarithm, the second hardly at all.
//
//   proof_time [LARGEST]      (1,000,000 unless told otherwise)
#include <fmt/format.h>

#include <QCoreApplication>
#include <QTemporaryDir>
#include <chrono>
#include <cstdlib>
#include <nlohmann/json.hpp>
#include <random>

#include "ledger.h"

namespace {

using namespace steadyturn;

template <typename Action>
double seconds(Action&& action) {
  const auto start = std::chrono::steady_clock::now();
  action();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

// Entries of a check's usual size.
void append(Database& database, std::int64_t count) {
  Ledger ledger(database);
  const Facts facts{{"note", std::string(1200, 'x')}};
  constexpr std::int64_t batch = 10000;
  for (std::int64_t done = 0; done < count; done += batch) {
    Transaction transaction(database);
    for (std::int64_t i = 0; i < std::min(batch, count - done); ++i)
      ledger.append({.at = "2026-03-14T09:26:53.589Z", .who = {}}, "check", facts);
    transaction.commit();
  }
}

struct Cost {
  double microseconds = 0;
  double rows = 0;
};

template <typename Prove>
Cost costOf(Database& database, std::uint64_t size, Prove&& prove) {
  constexpr int proofs = 300;
  std::mt19937_64 random(20261125);
  std::uniform_int_distribution<std::uint64_t> any(1, size);
  TreeNodes nodes(database);
  prove(nodes.source(), any(random));  // statements are prepared
  const auto before = nodes.rowsRead();
  const auto time = seconds([&] {
    for (int i = 0; i < proofs; ++i) prove(nodes.source(), any(random));
  });
  return {.microseconds = time / proofs * 1e6, .rows = static_cast<double>(nodes.rowsRead() - before) / proofs};
}

void compare(std::int64_t largest) {
  const QTemporaryDir folder;
  auto database = Database::create(folder.filePath("ledger.sqlite").toStdString()).value();
  double firstInclusion = 0, firstConsistency = 0;
  std::int64_t size = 0;
  for (std::int64_t next = 1000; next <= largest; next *= 10) {
    const auto added = next - size;
    const auto appending = seconds([&] { append(database, added); });
    size = next;
    const auto leaves = static_cast<std::uint64_t>(size);
    const auto inclusion = costOf(database, leaves, [&](const NodeSource& nodes, std::uint64_t place) {
      if (inclusionProof(nodes, leaves, place - 1).empty()) std::abort();
    });
    const auto consistency = costOf(database, leaves, [&](const NodeSource& nodes, std::uint64_t place) {
      if (place < leaves && consistencyProof(nodes, leaves, place).empty()) std::abort();
    });
    if (firstInclusion == 0) {
      firstInclusion = inclusion.microseconds;
      firstConsistency = consistency.microseconds;
    }
    fmt::print(
        "{:>8} entries: append {:.0f} µs; inclusion {:.0f} µs, {:.0f} rows, {:.1f} x 1,000's; consistency {:.0f} µs, "
        "{:.0f} rows, {:.1f} x\n",
        size, appending / static_cast<double>(added) * 1e6, inclusion.microseconds, inclusion.rows,
        inclusion.microseconds / firstInclusion, consistency.microseconds, consistency.rows,
        consistency.microseconds / firstConsistency);
  }
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  compare(argc > 1 ? std::atoll(argv[1]) : 1000000);
}
