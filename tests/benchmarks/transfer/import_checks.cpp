// How long a workshop's whole history takes to come in: `sturn import checks` of 1,000,000 readings, which parses,
// evaluates and proves each check, beside `sqlite3 .import` of the same file into one indexed table, which does none
// of it.
//
//   import_checks [READINGS] [ROUNDS]      (1,000,000 readings and 3 rounds unless told otherwise)
//
// Both run in turns on the same file in the same folder; the shortest time of each counts.
#include <fmt/core.h>

#include <QCoreApplication>
#include <algorithm>
#include <array>
#include <chrono>
#include <cstdint>
#include <cstdlib>
#include <filesystem>
#include <fstream>
#include <random>
#include <stdexcept>
#include <string>

#include "shop.h"

namespace {

using namespace steadyturn;
namespace fs = std::filesystem;

constexpr int toolCount = 400;
constexpr int readingsAtSetPoint = 5;
constexpr std::array setPoints{20, 60, 100};

std::string toolId(int number) { return fmt::format("TW-{:04}", number); }

void writeTools(const fs::path& path) {
  std::ofstream out(path, std::ios::binary);
  out << "tool,type,class,min,max,unit,resolution\r\n";
  for (int i = 0; i < toolCount; ++i) out << toolId(i) << ",II,A,20,100,N.m,1\r\n";
}

// Checks as a bench writes them down: day after day, the tools in turn, all readings of a check together.
void writeChecks(const fs::path& path, std::int64_t readings) {
  std::ofstream out(path, std::ios::binary);
  out << "tool,date,phase,target,reading,unit,reference,by\r\n";
  std::mt19937 random(1);
  std::int64_t written = 0;
  for (int check = 0; written < readings; ++check) {
    const std::string head = fmt::format("{},{},as_found,", toolId(check % toolCount),
                                         writeDate(Date(std::chrono::days(7'000 + check / toolCount * 30))));
    for (const int target : setPoints) {
      for (int i = 0; i < readingsAtSetPoint && written < readings; ++i, ++written) {
        const double share = static_cast<double>(random() % 4001) / 100'000;  // 0 … 0.04
        out << head << fmt::format("{},{:.2f},N.m,R1,bench {}\r\n", target, target * (0.98 + share), check % 3);
      }
    }
  }
}

template <typename Action>
double seconds(Action&& action) {
  const auto start = std::chrono::steady_clock::now();
  action();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

double importIntoSqlite(const fs::path& folder, const fs::path& file) {
  const fs::path database = folder / "plain.db";
  const fs::path script = folder / "plain.sql";
  fs::remove(database);
  std::ofstream(script)
      << "CREATE TABLE reading (tool TEXT, date TEXT, phase TEXT, target REAL, reading TEXT, unit TEXT, "
         "reference TEXT, \"by\" TEXT);\n"
         "CREATE INDEX reading_by_tool ON reading (tool, date, phase, target);\n"
      << ".import --csv --skip 1 " << file.string() << " reading\n";
  const std::string command = fmt::format("sqlite3 '{}' < '{}'", database.string(), script.string());
  return seconds([&] {
    if (std::system(command.c_str()) != 0) throw std::runtime_error("sqlite3 failed: is it installed?");
  });
}

template <typename T>
T orThrow(Result<T> result) {
  if (!result) throw std::runtime_error(result.error().front().field + ": " + result.error().front().found);
  return std::move(*result);
}

double importIntoShop(const fs::path& folder, const fs::path& file) {
  const fs::path database = folder / "shop.db";
  for (const char* ending : {"", "-wal", "-shm"}) fs::remove(database.string() + ending);
  Shop shop = orThrow(Shop::create(database.string()));
  std::ofstream(folder / "references.csv") << "reference,expanded_uncertainty_percent\nR1,0.4\n";
  orThrow(shop.importCsv(TableKind::Tools, (folder / "tools.csv").string(), {}));
  orThrow(shop.importCsv(TableKind::References, (folder / "references.csv").string(), {}));
  return seconds([&] { orThrow(shop.importCsv(TableKind::Checks, file.string(), {})); });
}

void compare(std::int64_t readings, int rounds) {
  const fs::path folder = fs::temp_directory_path() / fmt::format("steadyturn-benchmark-{}", std::random_device{}());
  fs::create_directory(folder);
  const fs::path file = folder / "checks.csv";
  writeTools(folder / "tools.csv");
  writeChecks(file, readings);
  fmt::print("{} readings, {:.1f} MB\n", readings, static_cast<double>(fs::file_size(file)) / 1e6);
  double plain = 1e9;
  double ours = 1e9;
  for (int round = 1; round <= rounds; ++round) {
    const double first = importIntoSqlite(folder, file);
    const double second = importIntoShop(folder, file);
    fmt::print("round {}: sqlite3 .import {:.2f} s, import checks {:.2f} s\n", round, first, second);
    plain = std::min(plain, first);
    ours = std::min(ours, second);
  }
  fs::remove_all(folder);
  fmt::print("import checks: {:.2f} s = {:.2f} x sqlite3 .import ({:.2f} s)\n", ours, ours / plain, plain);
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  compare(argc > 1 ? std::atoll(argv[1]) : 1'000'000, argc > 2 ? std::atoi(argv[2]) : 3);
}
