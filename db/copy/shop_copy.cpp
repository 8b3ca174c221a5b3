#include "shop_copy.h"

#include <fmt/format.h>

#include <array>

#include "connection.h"
#include "fastener_search.h"
#include "snapshot.h"
#include "statement.h"

namespace steadyturn {

namespace {

constexpr std::array tables{"ledger",
                            "shop_setting",
                            "imported_file",
                            "tool",
                            "tool_status_event",
                            "reference_standard",
                            "reference_range",
                            "fastener_revision",
                            "fastener_approval",
                            "fastener_synonym",
                            "fastener_word",
                            "service_list",
                            "check_record",
                            "check_point",
                            "bench_draft",
                            "bench_setup",
                            "job",
                            "job_event",
                            "tightening",
                            "recall_decision",
                            "recall_closing",
                            "signing_key",
                            "key_seal",
                            "signed_checkpoint",
                            "issued_report",
                            "account_event",
                            "account_secret",
                            "tree_node"};

// Of a server's answer all rows come at once: so many of them are asked for.
constexpr std::int64_t chunk = 5000;

std::int64_t numberFrom(Database& database, const std::string& sql) {
  Statement statement(database, sql);
  return statement.run().next() ? statement.integer(0) : 0;
}

// INSERT with the columns of the rows at hand, by their names: an engine may hold them in another order.
std::string insertLike(const Statement& rows, const char* table) {
  std::string names, marks;
  for (int column = 0; column < rows.columns(); ++column) {
    names += (column > 0 ? ", " : "") + rows.columnName(column).toStdString();
    marks += column > 0 ? ", ?" : "?";
  }
  return fmt::format("INSERT INTO {} ({}) VALUES ({})", table, names, marks);
}

class Copying {
 public:
  Copying(Database& from, Database& into, const std::function<bool(double)>& progress)
      : from_(from), into_(into), progress_(progress) {}

  bool all() {
    for (const auto* table : tables) total_ += numberFrom(from_, fmt::format("SELECT COUNT(*) FROM {}", table));
    return std::ranges::all_of(tables, [this](const char* table) { return rowsOf(table); });
  }

 private:
  bool rowsOf(const char* table) {
    // The ledger is by far the largest, and numbered without gaps; the tables of its kinds' rows are read in one.
    if (std::string_view(table) != "ledger") return add(table, fmt::format("SELECT * FROM {} ORDER BY 1", table));
    const auto last = numberFrom(from_, "SELECT COALESCE(MAX(seq), 0) FROM ledger");
    for (std::int64_t first = 0; first < last; first += chunk) {
      if (!add(table, "SELECT * FROM ledger WHERE seq > ? AND seq <= ? ORDER BY seq",
               {boundValue(first), boundValue(first + chunk)}))
        return false;
    }
    return true;
  }

  bool add(const char* table, const std::string& sql, const QVariantList& bounds = {}) {
    Statement rows(from_, sql);
    std::optional<Statement> insert;
    rows.runBound(bounds);
    while (rows.next()) {
      if (!insert) insert.emplace(into_, insertLike(rows, table));
      QVariantList values;
      for (int column = 0; column < rows.columns(); ++column) values << rows.value(column);
      insert->runBound(values);
      if (++done_ % 256 == 0 && progress_ && !progress_(static_cast<double>(done_) / static_cast<double>(total_)))
        return false;
    }
    return true;
  }

  Database& from_;
  Database& into_;
  const std::function<bool(double)>& progress_;
  std::int64_t total_ = 0, done_ = 0;
};

void indexFasteners(Database& database) {
  FastenerSearch search(database);
  Statement newest(
      database,
      "SELECT r.id, r.fastener, r.component, r.assembly, r.thread FROM fastener_revision r WHERE NOT EXISTS "
      "(SELECT 1 FROM fastener_revision n WHERE n.fastener = r.fastener AND n.number > r.number) ORDER BY "
      "r.id");
  newest.run();
  while (newest.next()) {
    Fastener fastener;
    fastener.id = newest.text(1);
    fastener.component = newest.text(2);
    fastener.assembly = newest.text(3);
    fastener.thread = newest.text(4);
    search.index(fastener, newest.integer(0));
  }
}

}  // namespace

std::span<const char* const> copiedTables() { return tables; }

bool copyShop(Database& from, Database& into, const std::function<bool(double)>& progress) {
  const Snapshot asItIs(from);
  Transaction transaction(into);
  if (numberFrom(into, "SELECT COUNT(*) FROM ledger") > 0) {
    throw StoreError({.kind = ProblemKind::Conflict,
                      .field = "shop",
                      .found = into.connection().address,
                      .accepted = "a shop that nothing was entered in yet"});
  }
  // A new shop brings words of its own; the one that comes has what it kept of them.
  Statement(into, "DELETE FROM fastener_synonym").run();
  if (!Copying(from, into, progress).all()) return false;
  indexFasteners(into);
  transaction.commit();
  return true;
}

}  // namespace steadyturn
