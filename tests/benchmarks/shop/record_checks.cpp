// How many whole checks a second are recorded: a check with its set-points, its ledger entry and the tree's hashes,
// each check in a transaction of its own that is on the disk when it returns. `Shop::recordCheck`, which also looks
// up what the check needs, evaluates it and asks whether it may, beside the bare sqlite3 library that writes the very
// same rows into the same tables with the same settings, from statements prepared once.
//
//   record_checks [CHECKS] [ROUNDS] [FOLDER]     (200 checks in each of 10 rounds, in the folder for temporary files)
//
// Both write in turns on the same disk; all rounds count. The tables' guards (triggers) are part of the tables; what
// the library does without them is printed as well.
#include <fmt/core.h>
#include <sqlite3.h>

#include <QCoreApplication>
#include <QTemporaryDir>
#include <chrono>
#include <cstdlib>
#include <filesystem>
#include <functional>
#include <memory>
#include <stdexcept>
#include <string>
#include <vector>

#include "crash_shop.h"

namespace {

using namespace steadyturn;

template <typename T>
T orThrow(Result<T> result) {
  if (!result) throw std::runtime_error(result.error().front().field + ": " + result.error().front().accepted);
  if constexpr (!std::is_void_v<T>) return std::move(*result);
}

double seconds(const std::function<void()>& action) {
  const auto start = std::chrono::steady_clock::now();
  action();
  return std::chrono::duration<double>(std::chrono::steady_clock::now() - start).count();
}

struct Value {
  void operator()(sqlite3_value* value) const { sqlite3_value_free(value); }
};
using Row = std::vector<std::unique_ptr<sqlite3_value, Value>>;

// A statement of the bare library, prepared once.
class Prepared {
 public:
  Prepared(sqlite3* database, const std::string& sql) : database_(database) {
    must(sqlite3_prepare_v3(database, sql.c_str(), -1, SQLITE_PREPARE_PERSISTENT, &statement_, nullptr) == SQLITE_OK);
  }
  ~Prepared() { sqlite3_finalize(statement_); }
  Prepared(const Prepared&) = delete;
  Prepared& operator=(const Prepared&) = delete;

  void run(const Row& values = {}) {
    for (std::size_t i = 0; i < values.size(); ++i) {
      must(sqlite3_bind_value(statement_, static_cast<int>(i) + 1, values[i].get()) == SQLITE_OK);
    }
    must(sqlite3_step(statement_) == SQLITE_DONE);
    sqlite3_reset(statement_);
  }
  std::vector<Row> rows(std::int64_t first, std::int64_t last) {
    sqlite3_bind_int64(statement_, 1, first);
    sqlite3_bind_int64(statement_, 2, last);
    std::vector<Row> rows;
    while (sqlite3_step(statement_) == SQLITE_ROW) {
      auto& row = rows.emplace_back();
      for (int i = 0; i < sqlite3_column_count(statement_); ++i) {
        row.emplace_back(sqlite3_value_dup(sqlite3_column_value(statement_, i)));
      }
    }
    sqlite3_reset(statement_);
    return rows;
  }

 private:
  void must(bool good) {
    if (!good) throw std::runtime_error(sqlite3_errmsg(database_));
  }
  sqlite3* database_;
  sqlite3_stmt* statement_ = nullptr;
};

class Bare {
 public:
  explicit Bare(const std::string& path) {
    if (sqlite3_open(path.c_str(), &database_) != SQLITE_OK) throw std::runtime_error(path);
  }
  ~Bare() { sqlite3_close(database_); }
  Bare(const Bare&) = delete;
  Bare& operator=(const Bare&) = delete;
  void execute(const std::string& sql) {
    if (sqlite3_exec(database_, sql.c_str(), nullptr, nullptr, nullptr) != SQLITE_OK)
      throw std::runtime_error(sqlite3_errmsg(database_));
  }
  // As setHabits() in db/engine/database.cpp sets them.
  void setHabits() {
    execute(
        "PRAGMA foreign_keys = ON; PRAGMA trusted_schema = OFF; PRAGMA cell_size_check = ON; "
        "PRAGMA cache_size = -65536; PRAGMA journal_mode = WAL; PRAGMA synchronous = FULL");
  }
  void dropGuards() {
    Prepared names(database_, "SELECT name FROM sqlite_schema WHERE type = 'trigger' AND ?1 = ?2");
    for (const auto& row : names.rows(0, 0)) {
      execute(fmt::format("DROP TRIGGER {}", reinterpret_cast<const char*>(sqlite3_value_text(row.front().get()))));
    }
  }
  sqlite3* get() const { return database_; }

 private:
  sqlite3* database_ = nullptr;
};

// All that one check wrote.
struct Written {
  std::vector<Row> entry, nodes, record, points;
};

std::int64_t entriesIn(const Bare& database) {
  Prepared newest(database.get(), "SELECT MAX(seq) FROM ledger WHERE ?1 = ?2");
  return sqlite3_value_int64(newest.rows(0, 0).front().front().get());
}

std::vector<Written> writtenBy(const std::string& shop, std::int64_t firstEntry, std::int64_t lastEntry) {
  Bare database(shop);
  Prepared entry(database.get(), "SELECT * FROM ledger WHERE seq BETWEEN ? AND ?");
  Prepared nodes(database.get(), "SELECT * FROM tree_node WHERE ((position + 1) << level) BETWEEN ? AND ?");
  Prepared record(database.get(), "SELECT * FROM check_record WHERE entry BETWEEN ? AND ?");
  Prepared points(
      database.get(),
      "SELECT * FROM check_point WHERE check_id IN (SELECT id FROM check_record WHERE entry BETWEEN ? AND "
      "?) ORDER BY position");
  std::vector<Written> all;
  for (auto at = firstEntry; at <= lastEntry; ++at) {
    all.push_back({entry.rows(at, at), nodes.rows(at, at), record.rows(at, at), points.rows(at, at)});
  }
  return all;
}

std::string insertInto(const char* table, int columns) {
  std::string sql = fmt::format("INSERT INTO {} VALUES (?", table);
  for (int i = 1; i < columns; ++i) sql += ",?";
  return sql + ")";
}

void writeBare(Bare& database, const std::vector<Written>& all) {
  const auto columns = [&](const std::vector<Row>& rows) { return static_cast<int>(rows.front().size()); };
  Prepared begin(database.get(), "BEGIN IMMEDIATE"), commit(database.get(), "COMMIT");
  Prepared entry(database.get(), insertInto("ledger", columns(all.front().entry)));
  Prepared node(database.get(), insertInto("tree_node", 3));
  Prepared record(database.get(), insertInto("check_record", columns(all.front().record)));
  Prepared point(database.get(), insertInto("check_point", columns(all.front().points)));
  for (const auto& written : all) {
    begin.run();
    for (const auto& row : written.entry) entry.run(row);
    for (const auto& row : written.nodes) node.run(row);
    for (const auto& row : written.record) record.run(row);
    for (const auto& row : written.points) point.run(row);
    commit.run();
  }
}

void compare(int checks, int rounds, const std::string& folder) {
  const QTemporaryDir place(QString::fromStdString(folder) + QStringLiteral("/record-checks-XXXXXX"));
  const auto in = [&](const char* name) { return place.filePath(QString::fromLatin1(name)).toStdString(); };
  {
    auto shop = orThrow(Shop::create(in("shop.db")));
    fill(shop);
  }
  for (const char* copy : {"guarded.db", "open.db"}) std::filesystem::copy_file(in("shop.db"), in(copy));
  Shop shop = orThrow(Shop::open(in("shop.db")));
  Bare guarded(in("guarded.db")), open(in("open.db"));
  guarded.setHabits();
  open.setHabits();
  open.dropGuards();
  const auto before = entriesIn(guarded);
  double ours = 0, bare = 0, unguarded = 0;
  for (int round = 0; round < rounds; ++round) {
    const int first = round * checks;
    ours += seconds([&] {
      for (int i = first; i < first + checks; ++i) orThrow(shop.recordCheck(checkOfDay(i)));
    });
    const auto written = writtenBy(in("shop.db"), before + first + 1, before + first + checks);
    bare += seconds([&] { writeBare(guarded, written); });
    unguarded += seconds([&] { writeBare(open, written); });
  }
  const double all = checks * rounds;
  fmt::print(
      "recorded checks a second: {:.0f} = {:.2f} x the bare library's {:.0f} ({:.2f} x its {:.0f} without the "
      "guards)\n",
      all / ours, bare / ours, all / bare, unguarded / ours, all / unguarded);
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  compare(argc > 1 ? std::atoi(argv[1]) : 200, argc > 2 ? std::atoi(argv[2]) : 10,
          argc > 3 ? argv[3] : std::filesystem::temp_directory_path().string());
}
