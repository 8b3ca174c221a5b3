#include "connection.h"

#include <QSqlError>
#include <atomic>

#include "engine_trouble.h"

namespace steadyturn {

namespace {

QString uniqueName() {
  static std::atomic<unsigned> count{0};
  return QStringLiteral("steadyturn-%1").arg(++count);
}

}  // namespace

Connection::Connection(std::string shopAddress, const QString& databaseName, const QString& options)
    : address(std::move(shopAddress)), name(uniqueName()) {
  auto database = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), name);
  database.setConnectOptions(options);
  database.setDatabaseName(databaseName);
  if (database.open()) return;
  const auto error = database.lastError();
  database = {};
  QSqlDatabase::removeDatabase(name);
  throw StoreError(engineTrouble(error, address));
}

Connection::~Connection() {
  handle().close();
  QSqlDatabase::removeDatabase(name);
}

}  // namespace steadyturn
