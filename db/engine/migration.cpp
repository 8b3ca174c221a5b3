#include "migration.h"

#include <fmt/format.h>
#include <sodium.h>

#include <QDateTime>
#include <array>

#include "connection.h"
#include "database.h"
#include "sql_script.h"
#include "statement.h"

namespace steadyturn {

namespace {

bool hasMigrationTable(Connection& connection) {
  Statement tables(connection,
                   connection.onServer()
                       ? "SELECT COUNT(*) FROM pg_catalog.pg_tables WHERE schemaname = 'steadyturn' AND tablename = "
                         "'schema_migration'"
                       : "SELECT COUNT(*) FROM sqlite_master WHERE type = 'table' AND name = 'schema_migration'");
  return tables.run().next() && tables.integer(0) == 1;
}

int newestVersion(Connection& connection) {
  if (!hasMigrationTable(connection)) return 0;
  Statement newest(connection, "SELECT COALESCE(MAX(version), 0) FROM schema_migration");
  newest.run().next();
  return static_cast<int>(newest.integer(0));
}

[[noreturn]] void refuseShop(const Connection& connection, std::string whatToDo) {
  throw StoreError({.kind = ProblemKind::Unavailable,
                    .field = "shop",
                    .found = connection.address,
                    .accepted = std::move(whatToDo)});
}

}  // namespace

std::string checksum(const Migration& migration) {
  std::array<unsigned char, crypto_hash_sha256_BYTES> hash{};
  // Bytes are bytes: the library wants them unsigned.
  const auto* bytes = reinterpret_cast<const unsigned char*>(migration.sql.data());
  crypto_hash_sha256(hash.data(), bytes, migration.sql.size());
  std::string hex;
  for (const auto byte : hash) hex += fmt::format("{:02x}", byte);
  return hex;
}

int appliedVersion(Connection& connection, std::span<const Migration> migrations) {
  if (!hasMigrationTable(connection)) return 0;
  const auto newestKnown = static_cast<int>(migrations.size());
  if (const int newest = newestVersion(connection); newest > newestKnown) {
    refuseShop(connection,
               fmt::format("a newer program: the shop is of version {}, this program knows {}; nothing was "
                           "changed",
                           newest, newestKnown));
  }
  Statement applied(connection, "SELECT version, name, sha256 FROM schema_migration ORDER BY version");
  applied.run();
  int version = 0;
  while (applied.next()) {
    if (applied.integer(0) != ++version) {
      refuseShop(connection, fmt::format("a shop whose step {} is on record; go back to a backup", version));
    }
    if (applied.text(2) != checksum(migrations[static_cast<std::size_t>(version - 1)])) {
      refuseShop(connection,
                 fmt::format("the program that made the shop: its step {} ({}) is not the one that this program "
                             "knows",
                             version, applied.text(1)));
    }
  }
  return version;
}

void apply(Connection& connection, const Migration& migration) {
  Transaction transaction(connection);
  applyWithin(connection, migration);
  transaction.commit();
}

void applyWithin(Connection& connection, const Migration& migration) {
  if (newestVersion(connection) >= migration.version) return;
  for (const auto statement : splitStatements(migration.sql)) {
    Statement::execute(connection, QString::fromUtf8(statement.data(), static_cast<qsizetype>(statement.size())));
  }
  Statement(connection, "INSERT INTO schema_migration (version, name, sha256, applied_at) VALUES (?, ?, ?, ?)")
      .run(migration.version, migration.name, checksum(migration),
           QDateTime::currentDateTimeUtc().toString(Qt::ISODateWithMs));
  // Beside the table for a reader of the file's first bytes; the engine keeps it within the transaction.
  if (!connection.onServer()) {
    Statement::execute(connection, QStringLiteral("PRAGMA user_version = %1").arg(migration.version));
  }
}

}  // namespace steadyturn
