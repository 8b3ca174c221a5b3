#include "snapshot.h"

#include <atomic>
#include <stdexcept>

#include "connection.h"
#include "statement.h"

namespace steadyturn {

Snapshot::Snapshot(Database& database) : connection_(database.connection()) {
  if (connection_.inTransaction) throw std::logic_error("a snapshot within a transaction");
  if (connection_.onServer()) {
    // What is read from it is read to its end (PostgreSQL 15, 20.7.4, "cursor_tuple_fraction").
    beginTransaction(connection_, {QStringLiteral("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY"),
                                   QStringLiteral("SET LOCAL cursor_tuple_fraction = 1")});
  } else {
    beginTransaction(connection_, {QStringLiteral("BEGIN")});
  }
  static std::atomic<std::uint64_t> number{0};
  connection_.snapshot = ++number;
}

Snapshot::~Snapshot() {
  connection_.inTransaction = false;
  connection_.snapshot = 0;
  connection_.forgetPostponed();
  // Nothing was written, so whatever this answers changes nothing.
  if (!connection_.isLost()) QSqlQuery(connection_.handle()).exec(QStringLiteral("ROLLBACK"));
}

}  // namespace steadyturn
