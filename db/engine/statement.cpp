#include "statement.h"

#include <QSqlError>

#include "connection.h"
#include "engine_trouble.h"

namespace steadyturn {

namespace {

[[noreturn]] void fail(Connection& connection, const QSqlError& error) {
  connection.failed = true;
  throw StoreError(engineTrouble(error, connection.address));
}

}  // namespace

Statement::Statement(Database& database, std::string_view sql) : Statement(database.connection(), sql) {}

Statement::Statement(Connection& connection, std::string_view sql)
    : connection_(&connection),
      sql_(QString::fromUtf8(sql.data(), static_cast<qsizetype>(sql.size()))),
      query_(connection.handle()) {
  query_.setForwardOnly(true);
}

void Statement::prepare() {
  if (prepared_) return;
  if (!query_.prepare(sql_)) fail(*connection_, query_.lastError());
  prepared_ = true;
}

void Statement::execute() {
  if (!query_.exec()) fail(*connection_, query_.lastError());
}

void Statement::execute(Connection& connection, const QString& sql) {
  QSqlQuery query(connection.handle());
  if (!query.exec(sql)) fail(connection, query.lastError());
}

bool Statement::next() {
  if (query_.next()) return true;
  // Qt says "no more rows" and "the disk failed" in the same way; only the error tells them apart.
  if (query_.lastError().isValid()) fail(*connection_, query_.lastError());
  query_.finish();
  return false;
}

std::optional<double> Statement::optionalReal(int column) const {
  const QVariant value = query_.value(column);
  return value.isNull() ? std::nullopt : std::optional(value.toDouble());
}

std::optional<std::int64_t> Statement::optionalInteger(int column) const {
  const QVariant value = query_.value(column);
  return value.isNull() ? std::nullopt : std::optional<std::int64_t>(value.toLongLong());
}

}  // namespace steadyturn
