#include "connection.h"

#include <atomic>
#include <utility>

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

Connection::Connection(const std::string& shopAddress, const ServerAddress& server)
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
  plans.forget();
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

void Connection::postpone(const QStringList& write) {
  postponed << write;
  for (const auto& statement : write) postponedLength += statement.size();
  // An import writes a million rows: they are not all kept here.
  constexpr qsizetype longEnough = 1 << 16;
  if (postponedLength < longEnough) return;
  QSqlQuery query(handle());
  if (!ask(query, {})) fail(query.lastError());
}

bool Connection::ask(QSqlQuery& query, const QStringList& statements) {
  const auto all = std::exchange(postponed, {}) + statements;
  postponedLength = 0;
  // Of several statements to a server each has its own answer; one that failed is the last.
  bool done = query.exec(all.join(QLatin1String(";\n")));
  for (qsizetype i = 1; done && i < all.size(); ++i) done = query.nextResult();
  if (!done) plans.forget();
  return done;
}

void Connection::forgetPostponed() {
  if (postponed.isEmpty()) return;
  postponed.clear();
  postponedLength = 0;
  plans.forget();
}

void Connection::fail(const QSqlError& error) {
  failed = true;
  if (isLost()) throw StoreError(connectionLost(address));
  throw StoreError(engineTrouble(error, address));
}

QSqlQuery beginTransaction(Connection& connection, const QStringList& how) {
  if (connection.isLost()) connection.reconnect();
  QSqlQuery query(connection.handle());
  bool begun = connection.ask(query, how);
  if (!begun && connection.isLost()) {
    connection.reconnect();
    query = QSqlQuery(connection.handle());
    begun = connection.ask(query, how);
  }
  if (!begun) {
    const auto error = query.lastError();
    if (connection.onServer() && !connection.isLost())
      QSqlQuery(connection.handle()).exec(QStringLiteral("ROLLBACK"));
    throw StoreError(engineTrouble(error, connection.address));
  }
  connection.inTransaction = true;
  connection.failed = false;
  return query;
}

}  // namespace steadyturn
