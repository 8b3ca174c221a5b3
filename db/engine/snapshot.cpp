#include "snapshot.h"

#include <stdexcept>

#include "connection.h"
#include "statement.h"

namespace steadyturn {

Snapshot::Snapshot(Database& database) : connection_(database.connection()) {
  if (connection_.inTransaction) throw std::logic_error("a snapshot within a transaction");
  Statement::execute(connection_, QStringLiteral("BEGIN"));
  connection_.inTransaction = true;
}

Snapshot::~Snapshot() {
  connection_.inTransaction = false;
  // Nothing was written, so whatever this answers changes nothing.
  QSqlQuery(connection_.handle()).exec(QStringLiteral("ROLLBACK"));
}

}  // namespace steadyturn
