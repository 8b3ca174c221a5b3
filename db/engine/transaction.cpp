#include <stdexcept>

#include "connection.h"
#include "database.h"
#include "statement.h"

namespace steadyturn {

Transaction::Transaction(Database& database) : Transaction(database.connection()) {}

Transaction::Transaction(Connection& connection) : connection_(connection) {
  if (connection_.inTransaction) throw std::logic_error("a transaction within a transaction");
  // Taking the write lock now, not at the first write, means a busy shop is met before any work is done.
  Statement::execute(connection_, QStringLiteral("BEGIN IMMEDIATE"));
  connection_.inTransaction = true;
  connection_.failed = false;
  ++connection_.transactions;
}

Transaction::~Transaction() {
  if (!done_) rollBack();
}

void Transaction::commit() {
  if (done_) throw std::logic_error("a transaction is committed once");
  if (connection_.failed) {
    rollBack();
    throw StoreError({.kind = ProblemKind::Unavailable,
                      .field = "shop",
                      .found = connection_.address,
                      .accepted = "something could not be written, so nothing was kept: try again"});
  }
  Statement::execute(connection_, QStringLiteral("COMMIT"));
  done_ = true;
  connection_.inTransaction = false;
}

void Transaction::rollBack() noexcept {
  done_ = true;
  connection_.inTransaction = false;
  // Whatever this answers, the engine has let go: on a full disk it rolled back by itself and says there is nothing
  // to do.
  QSqlQuery(connection_.handle()).exec(QStringLiteral("ROLLBACK"));
}

}  // namespace steadyturn
