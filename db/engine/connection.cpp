#include "connection.h"

#include <QSqlError>
#include <atomic>

#include "engine_trouble.h"
#include "store_error.h"

namespace steadyturn {

namespace {

QString uniqueName() {
  static std::atomic<unsigned> count{0};
  return QStringLiteral("steadyturn-%1").arg(++count);
}

// A bench waits five seconds for a server, and ten for an answer that the network lost (PostgreSQL 15, 34.1.2).
const QString serverOptions = QStringLiteral(
    "connect_timeout=5 tcp_user_timeout=10000 keepalives_idle=10 keepalives_interval=5 application_name=steadyturn");

void openOrThrow(QSqlDatabase& database, const QString& name, const std::string& address) {
  if (database.open()) return;
  const auto error = database.lastError();
  database = {};
  QSqlDatabase::removeDatabase(name);
  throw StoreError(engineTrouble(error, address));
}

}  // namespace

Connection::Connection(std::string shopAddress, const QString& databaseName, const QString& options)
    : engine(Engine::Sqlite), address(std::move(shopAddress)), name(uniqueName()) {
  auto database = QSqlDatabase::addDatabase(QStringLiteral("QSQLITE"), name);
  database.setConnectOptions(options);
  database.setDatabaseName(databaseName);
  openOrThrow(database, name, address);
}

Connection::Connection(std::string shopAddress, const ServerAddress& server)
    : engine(Engine::PostgreSql), address(shownAddress(shopAddress)), name(uniqueName()) {
  auto database = QSqlDatabase::addDatabase(QStringLiteral("QPSQL"), name);
  database.setHostName(server.server);
  database.setPort(server.port);
  database.setUserName(server.user);
  database.setPassword(server.password);
  database.setDatabaseName(server.database);
  database.setConnectOptions(serverOptions + server.options);
  openOrThrow(database, name, address);
}

Connection::~Connection() {
  atRest.clear();
  handle().close();
  QSqlDatabase::removeDatabase(name);
}

void Connection::reconnect() {
  auto database = handle();
  database.close();
  if (!database.open()) throw StoreError(engineTrouble(database.lastError(), address));
  for (const auto& habit : habits) say(habit);
}

void Connection::makeHabit(const QString& sql) {
  say(sql);
  habits << sql;
}

void Connection::say(const QString& sql) const {
  QSqlQuery query(handle());
  if (!query.exec(sql)) throw StoreError(engineTrouble(query.lastError(), address));
}

void beginTransaction(Connection& connection, const QString& how) {
  if (connection.isLost()) connection.reconnect();
  QSqlQuery query(connection.handle());
  bool begun = query.exec(how);
  if (!begun && connection.isLost()) {
    connection.reconnect();
    query = QSqlQuery(connection.handle());
    begun = query.exec(how);
  }
  if (!begun) throw StoreError(engineTrouble(query.lastError(), connection.address));
  connection.inTransaction = true;
  connection.failed = false;
}

}  // namespace steadyturn
