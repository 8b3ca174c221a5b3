#include "snapshot.h"

#include <stdexcept>

#include "connection.h"
#include "statement.h"

namespace steadyturn {

Snapshot::Snapshot(Database& database) : connection_(database.connection()) {
  if (connection_.inTransaction) throw std::logic_error("a snapshot within a transaction");
  beginTransaction(connection_,
                   {connection_.onServer() ? QStringLiteral("BEGIN ISOLATION LEVEL REPEATABLE READ READ ONLY")
                                           : QStringLiteral("BEGIN")});
}

Snapshot::~Snapshot() {
  connection_.inTransaction = false;
  // Nothing was written, so whatever this answers changes nothing.
  if (!connection_.isLost()) QSqlQuery(connection_.handle()).exec(QStringLiteral("ROLLBACK"));
}

}  // namespace steadyturn
