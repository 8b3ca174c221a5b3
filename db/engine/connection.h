// What stands behind a Database: Qt's connection and the state of the transaction at hand. It stays where it is while
// its Database moves, so statements may point to it.
#pragma once

#include <QSqlDatabase>
#include <QSqlQuery>
#include <QString>
#include <QStringList>
#include <cstdint>
#include <string>
#include <unordered_map>
#include <vector>

#include "shop_address.h"

namespace steadyturn {

enum class Engine { Sqlite, PostgreSql };

struct Connection {
  // Opens the file `databaseName` with the options of Qt's SQLite driver. Throws StoreError.
  Connection(std::string shopAddress, const QString& databaseName, const QString& options);
  // Connects to a server's database. Throws StoreError.
  Connection(std::string shopAddress, const ServerAddress& server);
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

  Engine engine;
  std::string address;  // what a person calls the shop, without a password; for messages
  QString name;         // what Qt calls the connection; unique
  bool inTransaction = false;
  bool failed = false;             // a statement failed in the transaction at hand
  std::uint64_t transactions = 0;  // begun so far; what is remembered of the store is good within one of them
  // Prepared statements at rest, by their text: the next one of the same text goes on with it.
  std::unordered_map<QString, std::vector<QSqlQuery>> atRest;

 private:
  void say(const QString& sql) const;

  QStringList habits;
};

// Says `how` ("BEGIN …"); a server's connection that broke while nobody used it is taken up again first. Throws
// StoreError.
void beginTransaction(Connection& connection, const QString& how);

}  // namespace steadyturn
