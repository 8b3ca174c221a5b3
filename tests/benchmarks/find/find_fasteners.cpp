// Finding while typing over a large shop: each keystroke's search as the Bay asks for it, beside the bare FTS5 query
// of the same words through the sqlite3 library on the same file, in turns in one run.
#include <fmt/format.h>
#include <sqlite3.h>

#include <QCoreApplication>
#include <QTemporaryDir>
#include <algorithm>
#include <array>
#include <chrono>
#include <cstdio>
#include <cstdlib>
#include <fstream>
#include <random>
#include <stdexcept>

#include "shop.h"

namespace {

using namespace steadyturn;
using Clock = std::chrono::steady_clock;

constexpr int shown = 200;  // as many as the Bay lists

constexpr std::array vehicles{"small van",     "panel van",    "minibus",     "street sweeper", "refuse lorry",
                              "gritter lorry", "park tractor", "pool car",    "loader",         "excavator",
                              "trailer",       "fire engine",  "snow plough", "lift platform",  "mower"};
constexpr std::array assemblies{
    "engine", "gearbox", "front axle", "rear axle", "steering", "brakes", "cooling", "hydraulics",
    "cab",    "frame",   "exhaust",    "fuel",      "clutch",   "winch",  "Kühlung", "carrosserie arrière"};
constexpr std::array components{"drain plug",
                                "fill plug",
                                "oil filter housing cover",
                                "wheel nut",
                                "brake bracket bolt",
                                "spark plug",
                                "glow plug",
                                "valve cover screw",
                                "bearing cap bolt",
                                "flange screw",
                                "banjo bolt",
                                "hose clamp",
                                "engine mount bolt",
                                "belt tensioner bolt",
                                "water pump screw",
                                "thermostat housing screw",
                                "injector clamp bolt",
                                "turbo support screw",
                                "propeller shaft flange bolt",
                                "shock absorber nut",
                                "steering arm nut",
                                "caliper guide pin",
                                "sensor",
                                "relief valve",
                                "pump coupling screw",
                                "manifold stud nut",
                                "starter bolt",
                                "Entlüftungsdeckel"};

std::string writeShop(const QTemporaryDir& folder, int count) {
  const auto csv = folder.filePath("fasteners.csv").toStdString();
  std::ofstream out(csv);
  out << "fastener,assembly,component,thread,target,unit\n";
  std::mt19937 random(7);
  for (int i = 0; i < count; ++i) {
    const auto any = [&](const auto& list) { return list[random() % list.size()]; };
    out << fmt::format("F{:06},{} {} {},{},M{},{},N.m\n", i, any(vehicles), 1 + random() % 40, any(assemblies),
                       any(components), 6 + 2 * (random() % 8), 10 + random() % 90);
  }
  return csv;
}

// What people type, letter by letter: plain, what others call it, with a slip, with an accent left out, a mark.
std::vector<std::string> keystrokes() {
  std::vector<std::string> all;
  for (const std::string typed :
       {"drain plug panel", "wheel nut refuse", "sump plug small van", "oil filter housing", "brake carrier minibus",
        "vlave cover", "drian plug", "thermostta housing", "entluftungs", "kuhlung sensor", "F012345", "M12 bolt",
        "turbo support gritter", "rocker cover mower", "injector clamp", "spark plug", "manifold stud"}) {
    for (std::size_t length = 1; length <= typed.size(); ++length) all.push_back(typed.substr(0, length));
  }
  return all;
}

std::string bareExpression(const std::string& typed) {
  std::string expression;
  for (std::size_t from = 0; from < typed.size();) {
    const auto end = std::min(typed.find(' ', from), typed.size());
    if (end > from) expression += (expression.empty() ? "\"" : " AND \"") + typed.substr(from, end - from) + "\"*";
    from = end + 1;
  }
  return expression;
}

class Bare {
 public:
  explicit Bare(const std::string& file) {
    if (sqlite3_open_v2(file.c_str(), &database_, SQLITE_OPEN_READONLY, nullptr) != SQLITE_OK) {
      throw std::runtime_error("can't open the shop");
    }
    sqlite3_prepare_v2(database_,
                       "SELECT rowid FROM fastener_search WHERE fastener_search MATCH ? ORDER BY rank LIMIT ?", -1,
                       &query_, nullptr);
  }
  ~Bare() {
    sqlite3_finalize(query_);
    sqlite3_close(database_);
  }
  Bare(const Bare&) = delete;
  Bare& operator=(const Bare&) = delete;
  int find(const std::string& expression) {
    sqlite3_reset(query_);
    sqlite3_bind_text(query_, 1, expression.c_str(), -1, SQLITE_TRANSIENT);
    sqlite3_bind_int(query_, 2, shown);
    int rows = 0;
    while (sqlite3_step(query_) == SQLITE_ROW) ++rows;
    return rows;
  }

 private:
  sqlite3* database_ = nullptr;
  sqlite3_stmt* query_ = nullptr;
};

template <typename Work>
double milliseconds(Work work) {
  const auto begin = Clock::now();
  work();
  return std::chrono::duration<double, std::milli>(Clock::now() - begin).count();
}

double percentile(std::vector<double> times, double share) {
  std::ranges::sort(times);
  return times[static_cast<std::size_t>(share * static_cast<double>(times.size() - 1))];
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  const int count = argc > 1 ? std::atoi(argv[1]) : 100'000;
  constexpr int rounds = 5;
  const QTemporaryDir folder;
  const auto file = folder.filePath("shop.sturn").toStdString();
  auto shop = Shop::create(file);
  if (!shop || !shop->importCsv(TableKind::Fasteners, writeShop(folder, count), {})) return 1;
  Bare bare(file);
  std::vector<double> ours, theirs;
  std::size_t found = 0, foundBare = 0;
  for (int round = 0; round < rounds; ++round) {
    for (const std::string& typed : keystrokes()) {
      const auto expression = bareExpression(typed);
      int rows = 0;
      theirs.push_back(milliseconds([&] { rows = bare.find(expression); }));
      std::size_t mine = 0;
      ours.push_back(milliseconds([&] { mine = shop->findFasteners(typed, shown)->size(); }));
      found += mine > 0 ? 1 : 0;
      foundBare += rows > 0 ? 1 : 0;
    }
  }
  fmt::print("{} fasteners, {} keystrokes ({} found something, {} with the bare query)\n", count, ours.size(), found,
             foundBare);
  fmt::print("ms a keystroke   p50    p99    max\n");
  for (const auto& [name, times] : {std::pair{"find", &ours}, {"bare FTS5", &theirs}}) {
    fmt::print("{:<12} {:>7.2f} {:>6.2f} {:>6.2f}\n", name, percentile(*times, 0.5), percentile(*times, 0.99),
               percentile(*times, 1));
  }
  fmt::print("p99 ratio {:.2f}\n", percentile(ours, 0.99) / percentile(theirs, 0.99));
}
