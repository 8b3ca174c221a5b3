// One SQL statement: every statement of the store goes through here, with values only in the place of a '?'. It is
// prepared at its first run, and the connection keeps it for the next one of the same text. To a server the values go
// as the driver writes them, in one journey, and a write inside a transaction goes with the question or the COMMIT
// that follows it (Connection::postpone); a server's answers come whole, but piece by piece within a Snapshot. Throws
// StoreError; a failure inside a transaction is remembered by it.
#pragma once

#include <QByteArray>
#include <QSqlQuery>
#include <QSqlRecord>
#include <QVariant>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>

#include "database.h"
#include "stored_text.h"

namespace steadyturn {

struct Connection;

inline QVariant boundValue(std::string_view text) { return storedText(text); }
inline QVariant boundValue(const std::string& text) { return storedText(text); }
inline QVariant boundValue(const char* text) { return storedText(text); }
inline QVariant boundValue(const QString& text) { return text; }
inline QVariant boundValue(const QByteArray& bytes) { return bytes; }
inline QVariant boundValue(int number) { return number; }
inline QVariant boundValue(std::int64_t number) { return QVariant::fromValue<qlonglong>(number); }
inline QVariant boundValue(double number) { return number; }
inline QVariant boundValue(bool yes) { return yes ? 1 : 0; }
template <typename Value>
QVariant boundValue(const std::optional<Value>& value) {
  return value ? boundValue(*value) : QVariant();
}

class Statement {
 public:
  // REQUIRES: the database outlives the statement.
  Statement(Database& database, std::string_view sql);
  Statement(Connection& connection, std::string_view sql);
  Statement(Statement&& other) noexcept;
  Statement& operator=(Statement&&) = delete;
  ~Statement();

  // Binds the values to the '?' in order and runs; as often as wanted.
  template <typename... Values>
  Statement& run(const Values&... values) {
    if (onServer_) {
      runOnServer({boundValue(values)...});
      return *this;
    }
    prepare();
    int position = 0;
    (query_.bindValue(position++, boundValue(values)), ...);
    execute();
    return *this;
  }
  Statement& runBound(const QVariantList& values);  // the same for values whose number is not known beforehand

  // Runs once without preparing or repeating: for COMMIT, PRAGMA and the statements of a migration.
  static void execute(Connection& connection, const QString& sql);

  // Steps to the first or next row; false (and the statement is put at rest) after the last.
  bool next();
  // Ends reading early, so that no lock stays.
  void finish();

  // Of the row at hand.
  bool isNull(int column) const { return query_.isNull(column); }
  int columns() const { return query_.record().count(); }
  QString columnName(int column) const { return query_.record().fieldName(column); }
  QVariant value(int column) const { return query_.value(column); }
  QString string(int column) const { return query_.value(column).toString(); }
  std::string text(int column) const { return string(column).toStdString(); }
  QByteArray bytes(int column) const { return query_.value(column).toByteArray(); }
  std::int64_t integer(int column) const { return query_.value(column).toLongLong(); }
  double real(int column) const { return query_.value(column).toDouble(); }
  std::optional<double> optionalReal(int column) const;
  std::optional<std::int64_t> optionalInteger(int column) const;

 private:
  void prepare();
  void execute();
  void runOnServer(const QVariantList& values);
  void readInPieces(const QStringList& values);
  bool nextPiece();
  void closeCursor();

  Connection* connection_;
  bool onServer_;
  QString sql_;
  bool answers_;  // somebody may read its answer
  QSqlQuery query_;
  bool prepared_ = false;
  QString cursor_;                     // read through it; empty: the answer came whole
  std::uint64_t cursorsSnapshot_ = 0;  // where it was declared, and ends
};

}  // namespace steadyturn
