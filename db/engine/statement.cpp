#include "statement.h"

#include <QSqlDriver>
#include <QSqlError>
#include <QSqlField>
#include <utility>

#include "connection.h"
#include "engine_trouble.h"

namespace steadyturn {

namespace {

// Whether anybody may read an answer: a write that returns no rows has none.
bool hasAnswer(const QString& sql) {
  const bool writes = sql.startsWith(QLatin1String("INSERT")) || sql.startsWith(QLatin1String("UPDATE")) ||
                      sql.startsWith(QLatin1String("DELETE"));
  return !writes || sql.contains(QLatin1String("RETURNING"));
}

constexpr int pieceRows = 5000;  // some ten megabytes of ledger entries

QString fetchFrom(const QString& cursor) { return QStringLiteral("FETCH %1 FROM %2").arg(pieceRows).arg(cursor); }

QString writtenValue(const QSqlDriver& driver, const QVariant& value, const std::string& address) {
  if (value.metaType().id() == QMetaType::QString && value.toString().contains(QChar(QChar::Null))) {
    throw StoreError({.field = "text",
                      .found = address,
                      .accepted = "text without zero bytes: a shop on a server can't keep any"});
  }
  QSqlField field(QString(), value.metaType());
  field.setValue(value);
  return driver.formatValue(field);
}

}  // namespace

Statement::Statement(Database& database, std::string_view sql) : Statement(database.connection(), sql) {}

Statement::Statement(Connection& connection, std::string_view sql)
    : connection_(&connection),
      onServer_(connection.onServer()),
      sql_(QString::fromUtf8(sql.data(), static_cast<qsizetype>(sql.size()))),
      answers_(hasAnswer(sql_)),
      query_(connection.handle()) {
  // From a server rows are fetched at once: several statements read side by side, and it sends one's rows at a time.
  query_.setForwardOnly(!onServer_);
}

Statement::Statement(Statement&& other) noexcept
    : connection_(other.connection_),
      onServer_(other.onServer_),
      sql_(std::move(other.sql_)),
      answers_(other.answers_),
      query_(std::move(other.query_)),
      prepared_(std::exchange(other.prepared_, false)),
      cursor_(std::exchange(other.cursor_, {})),
      cursorsSnapshot_(other.cursorsSnapshot_) {}

Statement::~Statement() {
  closeCursor();
  if (!prepared_) return;
  query_.finish();
  connection_->atRest[sql_].push_back(std::move(query_));
}

void Statement::prepare() {
  if (prepared_) return;
  if (auto& rested = connection_->atRest[sql_]; !rested.empty()) {
    query_ = std::move(rested.back());
    rested.pop_back();
    prepared_ = true;
    return;
  }
  if (!query_.prepare(sql_)) connection_->fail(query_.lastError());
  prepared_ = true;
}

void Statement::execute() {
  if (!query_.exec()) connection_->fail(query_.lastError());
}

Statement& Statement::runBound(const QVariantList& values) {
  if (onServer_) {
    runOnServer(values);
    return *this;
  }
  prepare();
  for (qsizetype i = 0; i < values.size(); ++i) query_.bindValue(static_cast<int>(i), values[i]);
  execute();
  return *this;
}

void Statement::runOnServer(const QVariantList& values) {
  const auto& driver = *connection_->handle().driver();
  QStringList written;
  for (const auto& value : values) written << writtenValue(driver, value, connection_->address);
  if (connection_->snapshot != 0 && sql_.startsWith(QLatin1String("SELECT"))) return readInPieces(written);
  const auto call = [&] { return connection_->plans.callOf(sql_, written); };
  if (connection_->inTransaction && !answers_) {
    connection_->postpone(call());
    return;
  }
  if (!connection_->isLost() && connection_->ask(query_, call())) return;
  // What only reads can be asked again on a new connection; a transaction is gone with the old one.
  const bool readsOnly = sql_.startsWith(QLatin1String("SELECT"));
  if (connection_->inTransaction || !connection_->isLost() || !readsOnly) connection_->fail(query_.lastError());
  connection_->reconnect();
  query_ = QSqlQuery(connection_->handle());
  if (!connection_->ask(query_, call())) connection_->fail(query_.lastError());
}

// Who reads from a snapshot walks through whole tables: a ledger of a million entries is a gigabyte.
void Statement::readInPieces(const QStringList& values) {
  closeCursor();
  const auto name = QStringLiteral("steadyturn_%1").arg(++connection_->cursors);
  const auto declared = QStringLiteral("DECLARE %1 NO SCROLL CURSOR FOR ").arg(name) + withValues(sql_, values);
  if (!connection_->ask(query_, {declared, fetchFrom(name)})) connection_->fail(query_.lastError());
  cursor_ = name;
  cursorsSnapshot_ = connection_->snapshot;
}

bool Statement::nextPiece() {
  if (cursor_.isEmpty() || query_.size() < pieceRows) return false;
  if (!connection_->ask(query_, {fetchFrom(cursor_)})) connection_->fail(query_.lastError());
  return query_.next();
}

void Statement::closeCursor() {
  if (cursor_.isEmpty()) return;
  // With its snapshot it is gone by itself.
  if (connection_->snapshot == cursorsSnapshot_) connection_->postpone({QStringLiteral("CLOSE ") + cursor_});
  cursor_.clear();
}

void Statement::finish() {
  query_.finish();
  closeCursor();
}

void Statement::execute(Connection& connection, const QString& sql) {
  QSqlQuery query(connection.handle());
  if (!connection.ask(query, {sql})) connection.fail(query.lastError());
}

bool Statement::next() {
  if (query_.next()) return true;
  // Qt says "no more rows" and "the disk failed" in the same way; only the error tells them apart.
  if (query_.lastError().isValid()) connection_->fail(query_.lastError());
  if (nextPiece()) return true;
  finish();
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
