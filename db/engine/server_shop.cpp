// Opening a shop on a PostgreSQL server: Database's other half.
#include <fmt/format.h>

#include "connection.h"
#include "database.h"
#include "engine_trouble.h"
#include "statement.h"

namespace steadyturn {

namespace {

// Long names of databases are cut as the server cuts names (PostgreSQL 15, 4.1.1).
constexpr const char* writerRole = "left('steadyturn_write_' || current_database(), 63)";
constexpr const char* lookerRole = "left('steadyturn_look_' || current_database(), 63)";

Problem unavailable(const Connection& connection, std::string whatToDo) {
  return {.kind = ProblemKind::Unavailable,
          .field = "shop",
          .found = connection.address,
          .accepted = std::move(whatToDo)};
}

std::unique_ptr<Connection> connectTo(const std::string& address, const ServerAddress& server) {
  auto connection = std::make_unique<Connection>(address, server);
  // Names mean the shop's own things; a writer waits for another as long as for a file's; what is acknowledged is on
  // the server's disk.
  connection->makeHabit(QStringLiteral(
      "SELECT set_config('search_path', 'steadyturn, pg_temp', false), set_config('lock_timeout', '5s', "
      "false), set_config('synchronous_commit', 'on', false), set_config('client_min_messages', "
      "'warning', false), set_config('standard_conforming_strings', 'on', false), "
      "set_config('extra_float_digits', '1', false)"));
  return connection;
}

bool says(Connection& connection, const std::string& question) {
  Statement statement(connection, "SELECT " + question);
  return statement.run().next() && statement.integer(0) != 0;
}

bool isMember(Connection& connection, const char* role) {
  return says(connection, fmt::format("COALESCE((SELECT CAST(pg_has_role(session_user, oid, 'MEMBER') AS int) FROM "
                                      "pg_catalog.pg_roles WHERE rolname = {}), 0)",
                                      role));
}

bool hasShop(Connection& connection) {
  return says(connection,
              "COUNT(*) FROM pg_catalog.pg_tables WHERE schemaname = 'steadyturn' AND tablename = "
              "'schema_migration'");
}

std::string nameOf(Connection& connection, const char* role) {
  Statement statement(connection, std::string("SELECT ") + role);
  statement.run().next();
  return statement.text(0);
}

// From here on the program can do to the shop what its role can, whoever the user of the server is.
void takeRole(Connection& connection, const char* role) {
  connection.makeHabit(QStringLiteral("SELECT set_config('role', %1, false)").arg(QLatin1String(role)));
}

void lookOnly(Connection& connection) {
  connection.makeHabit(QStringLiteral("SELECT set_config('default_transaction_read_only', 'on', false)"));
}

void upgradeAsOwner(Connection& connection, std::span<const Migration> migrations, int found) {
  if (!says(connection,
            "CAST(pg_has_role(session_user, nspowner, 'MEMBER') AS int) FROM pg_catalog.pg_namespace "
            "WHERE nspname = 'steadyturn'")) {
    throw StoreError(unavailable(
        connection,
        fmt::format("the shop is of version {} and would be brought to {}: its owner on the server has to "
                    "open it once",
                    found, migrations.size())));
  }
  Statement::execute(connection, QStringLiteral("SET ROLE NONE"));
  Transaction transaction(connection);
  for (const auto& migration : migrations.subspan(static_cast<std::size_t>(found)))
    applyWithin(connection, migration);
  transaction.commit();
  connection.reconnect();  // and be what the program is again
}

}  // namespace

Result<Database> Database::createOnServer(const std::string& address, std::span<const Migration> migrations) {
  const auto cannot = [&](std::string whatToDo) {
    return refuse({.kind = ProblemKind::CannotCreate,
                   .field = "shop",
                   .found = shownAddress(address),
                   .accepted = std::move(whatToDo)});
  };
  const auto server = parseServerAddress(address);
  if (!server) return tl::unexpected(server.error());
  try {
    Database made(connectTo(address, *server), address);
    auto& connection = made.connection();
    if (hasShop(connection)) return cannot("a database of the server that has no shop in it yet");
    Transaction transaction(connection);
    Statement::execute(connection, QStringLiteral("CREATE SCHEMA steadyturn"));
    for (const auto& migration : migrations) applyWithin(connection, migration);
    transaction.commit();
    takeRole(connection, writerRole);
    made.version_ = static_cast<int>(migrations.size());
    made.outcome_ = OpenOutcome::Created;
    return made;
  } catch (const StoreError& error) {
    return cannot(error.problem().accepted);
  }
}

Result<Database> Database::openOnServer(const std::string& address, std::span<const Migration> migrations, Use use) {
  const auto server = parseServerAddress(address);
  if (!server) return tl::unexpected(server.error());
  const auto newest = static_cast<int>(migrations.size());
  try {
    Database opened(connectTo(address, *server), address);
    auto& connection = opened.connection();
    if (!hasShop(connection)) {
      return refuse(unavailable(connection, "a database with a shop in it; there is none (`sturn init` makes one)"));
    }
    const bool writes = isMember(connection, writerRole);
    const bool looks = isMember(connection, lookerRole);
    if (!writes && !looks) {
      const auto* const role = use == Use::Look ? lookerRole : writerRole;
      return refuse(unavailable(connection, fmt::format("a user of the server who is let in; its administrator says: "
                                                        "GRANT \"{}\" TO …",
                                                        nameOf(connection, role))));
    }
    opened.readOnly_ = use == Use::Look || !writes || says(connection, "CAST(pg_is_in_recovery() AS int)");
    const auto* const role = writes && !(opened.readOnly_ && looks) ? writerRole : lookerRole;
    takeRole(connection, role);
    if (const int found = appliedVersion(connection, migrations); found < newest) {
      if (opened.readOnly_) {
        return refuse(unavailable(connection, fmt::format("a shop of version {}; this one is of version {}: have its "
                                                          "owner on the server open it once",
                                                          newest, found)));
      }
      upgradeAsOwner(connection, migrations, found);
      opened.outcome_ = OpenOutcome::Upgraded;
    }
    if (opened.readOnly_) lookOnly(connection);
    opened.version_ = newest;
    return opened;
  } catch (const StoreError& error) {
    return refuse(error.problem());
  }
}

}  // namespace steadyturn
