// What stands behind a Database: Qt's connection and the state of the transaction at hand. It stays where it is while
// its Database moves, so statements may point to it.
#pragma once

#include <QSqlDatabase>
#include <QString>
#include <cstdint>
#include <string>

namespace steadyturn {

struct Connection {
  // Opens `databaseName` with the options of Qt's SQLite driver. Throws StoreError.
  Connection(std::string shopAddress, const QString& databaseName, const QString& options);
  ~Connection();
  Connection(const Connection&) = delete;
  Connection& operator=(const Connection&) = delete;

  QSqlDatabase handle() const { return QSqlDatabase::database(name, false); }

  std::string address;  // what a person calls the shop; for messages
  QString name;         // what Qt calls the connection; unique
  bool inTransaction = false;
  bool failed = false;             // a statement failed in the transaction at hand
  std::uint64_t transactions = 0;  // begun so far; what is remembered of the store is good within one of them
};

}  // namespace steadyturn
