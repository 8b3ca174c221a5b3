// What stands behind a Database: Qt's connection and the state of the transaction at hand. It stays where it is while
// its Database moves, so statements may point to it.
#pragma once

#include <QSqlDatabase>
#include <QSqlError>
#include <QSqlQuery>
#include <QString>
#include <QStringList>
#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

#include "server_plans.h"
#include "shop_address.h"

namespace steadyturn {

enum class Engine { Sqlite, PostgreSql };

struct Connection {
  // Opens the file `databaseName` with the options of Qt's SQLite driver. Throws StoreError.
  Connection(std::string shopAddress, const QString& databaseName, const QString& options);
  // Connects to a server's database. Throws StoreError.
  Connection(const std::string& shopAddress, const ServerAddress& server);
  ~Connection();
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  QSqlDatabase handle() const { return QSqlDatabase::database(name, false); }
  bool onServer() const { return engine == Engine::PostgreSql; }
  // A server's connection that broke, as the last statement found.
  bool isLost() const { return onServer() && !handle().isOpen(); }
  // Takes up a lost connection again, with its habits. Throws StoreError.
  void reconnect();
  // Says `sql` to the server now and after each reconnecting: what it sets counts for a connection's life.
  void makeHabit(const QString& sql);
  // Lets a write of the transaction at hand wait for the next question to the server, or for COMMIT, and go ahead of
  // it in the same journey: nobody reads its answer, and most of a short transaction is waiting for answers. What is
  // wrong with it is said then. Throws StoreError.
  void postpone(const QStringList& write);
  // Says to the engine what was postponed and then `statements`; `query` holds the last one's answer. False: one of
  // them failed, as the query's error says, and none behind it was done.
  bool ask(QSqlQuery& query, const QStringList& statements);
  void forgetPostponed();
  // A statement failed: the transaction at hand will not be committed. Throws StoreError.
  [[noreturn]] void fail(const QSqlError& error);

  Engine engine;
  std::string address;  // what a person calls the shop, without a password; for messages
  QString name;         // what Qt calls the connection; unique
  bool inTransaction = false;
  std::uint64_t snapshot = 0;      // the number of the one at hand, no two the same; 0: none
  bool failed = false;             // a statement failed in the transaction at hand
  std::uint64_t transactions = 0;  // begun so far; what is remembered of the store is good within one of them
  // A file's prepared statements at rest, by their text: the next one of the same text goes on with it.
  std::unordered_map<QString, std::vector<QSqlQuery>> atRest;
  ServerPlans plans;          // the same for a server's
  std::uint64_t cursors = 0;  // declared so far

 private:
  void say(const QString& sql) const;

  QStringList habits;
  QStringList postponed;
  qsizetype postponedLength = 0;
};

// Says `how` ("BEGIN …", and what goes with it) in one journey and gives the last one's answer; a server's connection
// that broke while nobody used it is taken up again first. Throws StoreError.
QSqlQuery beginTransaction(Connection& connection, const QStringList& how);

}  // namespace steadyturn
