#include <chrono>
#include <stdexcept>
#include <thread>

#include "connection.h"
#include "database.h"
#include "engine_trouble.h"
#include "statement.h"

namespace steadyturn {

namespace {

// "Stur": who holds this lock of the database writes; the next one waits (PostgreSQL 15, 13.3.5 "Advisory Locks").
constexpr std::int64_t writersLock = 0x53747572;

// Whether a transaction whose COMMIT got no answer is saved, once the server can be asked.
enum class Outcome { Saved, NotSaved, Unknown };

Outcome askOutcome(Connection& connection, const std::string& id) {
  using namespace std::chrono_literals;
  constexpr int tries = 20;
  for (int i = 0; i < tries; ++i) {
    try {
      if (connection.isLost()) connection.reconnect();
      Statement status(connection, "SELECT pg_xact_status(CAST(? AS xid8))");
      status.run(id).next();
      const auto told = status.text(0);
      status.finish();
      if (told == "committed") return Outcome::Saved;
      if (told == "aborted") return Outcome::NotSaved;
      if (told != "in progress") return Outcome::Unknown;
    } catch (const StoreError&) {
      // Not back yet.
    }
    std::this_thread::sleep_for(250ms);
  }
  return Outcome::Unknown;
}

}  // namespace

Transaction::Transaction(Database& database) : Transaction(database.connection()) {}

Transaction::Transaction(Connection& connection) : connection_(connection) {
  if (connection_.inTransaction) throw std::logic_error("a transaction within a transaction");
  // Taking the write lock now, not at the first write, means a busy shop is met before any work is done.
  if (connection_.onServer()) {
    auto begun = beginTransaction(
        connection_,
        {QStringLiteral("BEGIN"),
         QStringLiteral("SELECT pg_advisory_xact_lock(%1), CAST(pg_current_xact_id() AS text)").arg(writersLock)});
    begun.next();
    id_ = begun.value(1).toString().toStdString();
  } else {
    beginTransaction(connection_, {QStringLiteral("BEGIN IMMEDIATE")});
  }
  ++connection_.transactions;
}

Transaction::~Transaction() {
  if (!done_) rollBack();
}

void Transaction::commit() {
  if (done_) throw std::logic_error("a transaction is committed once");
  if (connection_.failed) {
    const bool lost = connection_.isLost();
    rollBack();
    if (lost) throw StoreError(connectionLost(connection_.address));
    throw StoreError({.kind = ProblemKind::Unavailable,
                      .field = "shop",
                      .found = connection_.address,
                      .accepted = "something could not be written, so nothing was kept: try again"});
  }
  try {
    Statement::execute(connection_, QStringLiteral("COMMIT"));
  } catch (const StoreError&) {
    if (!connection_.isLost()) throw;
    done_ = true;
    connection_.inTransaction = false;
    settle();
  }
  done_ = true;
  connection_.inTransaction = false;
}

void Transaction::settle() {
  switch (askOutcome(connection_, id_)) {
    case Outcome::Saved:
      return;
    case Outcome::NotSaved:
      throw StoreError(connectionLost(connection_.address));
    case Outcome::Unknown:
      throw StoreError({.kind = ProblemKind::Unavailable,
                        .field = "shop",
                        .found = connection_.address,
                        .accepted = "the connection to the server broke while it was saving: look whether this is "
                                    "there before you do it again"});
  }
}

void Transaction::rollBack() noexcept {
  done_ = true;
  connection_.inTransaction = false;
  connection_.forgetPostponed();
  // Whatever this answers, the engine has let go: on a full disk it rolled back by itself and says there is nothing
  // to do; a server does so when the connection breaks.
  if (!connection_.isLost()) QSqlQuery(connection_.handle()).exec(QStringLiteral("ROLLBACK"));
}

}  // namespace steadyturn
