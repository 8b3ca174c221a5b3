// One connection to a shop's database, used by one thread: a file, or a database of a PostgreSQL server. Opening is a
// small state machine; see OpenOutcome.
#pragma once

#include <cstdint>
#include <memory>
#include <span>
#include <string>

#include "migration.h"
#include "store_error.h"

namespace steadyturn {

enum class OpenOutcome {
  Created,   // a new shop
  UpToDate,  // nothing to do
  Upgraded   // migrations were run; a copy of the file as it was stands beside it
};

struct Connection;

// Which file of which file system; zero: none.
struct FileIdentity {
  std::uint64_t device = 0, number = 0;
  bool operator==(const FileIdentity&) const = default;
};

class Database {
 public:
  // A new shop at `address` (a file, or a server's database without a shop in it; shop_address.h). Problems:
  // CannotCreate when it exists already or can't be written.
  static Result<Database> create(const std::string& address);
  // An existing shop. Problems (Unavailable): missing, not a database, a directory, not a shop of ours, newer
  // than the program (refused, untouched), a migration whose text differs from the one that was run, busy,
  // unreadable. A shop this user can't write (its file or its folder) is opened to be read. Before an upgrade a copy
  // of the shop is made beside it: SHOP.before-vN, N the version that comes; a number is added rather than an older
  // copy replaced. On a server the program takes on its role (db/migrations/postgresql/0001_shop.sql), and only the
  // shop's owner upgrades it, all of it or nothing.
  static Result<Database> open(const std::string& address);

  // An existing shop to be looked at: nothing is written to it or beside it, not even for a moment. Others may write
  // meanwhile: disturbed() tells.
  static Result<Database> openToLook(const std::string& address);

  // The same with another history of the schema than this program's own: how each outcome is tested.
  static Result<Database> create(const std::string& address, std::span<const Migration> migrations);
  static Result<Database> open(const std::string& address, std::span<const Migration> migrations);
  enum class Use { Work, Look };
  static Result<Database> createOnServer(const std::string& address, std::span<const Migration> migrations);
  static Result<Database> openOnServer(const std::string& address, std::span<const Migration> migrations, Use use);

  // Takes away a shop that was not finished, for the one who made it. Whether that succeeds is not told: it is called
  // where something else has failed.
  static void remove(Database&& unfinished) noexcept;

  Database(Database&&) noexcept;
  Database& operator=(Database&&) noexcept;
  ~Database();

  OpenOutcome outcome() const { return outcome_; }
  bool readOnly() const { return readOnly_; }
  // Whether the file of a shop that is only looked at was written to since it was opened: what is read may then not
  // belong together.
  bool disturbed() const;
  // Whether the file still stands under its name. One that was moved, replaced or deleted while it was open would go
  // on taking what is written, where nobody looks for it.
  bool isWhereItWas() const;
  const std::string& address() const { return address_; }  // as it was given, a password among it
  int schemaVersion() const { return version_; }
  const std::string& copyBeforeUpgrade() const { return copy_; }  // its path; empty unless Upgraded
  Connection& connection() { return *connection_; }

 private:
  Database(std::unique_ptr<Connection> connection, std::string address);

  std::unique_ptr<Connection> connection_;
  std::string address_;
  std::string copy_;
  OpenOutcome outcome_ = OpenOutcome::UpToDate;
  bool readOnly_ = false;
  FileIdentity file_;
  std::string asOpened_;  // how the file stood, where it is read without locks
  int version_ = 0;
};

// A transaction that takes the write lock at once; rolled back unless committed. A statement that failed inside makes
// commit refuse, on every engine. One at a time on a connection. Where a server's connection breaks while it commits,
// the server is asked on a new one what became of it. Throws StoreError.
class Transaction {
 public:
  explicit Transaction(Database& database);
  explicit Transaction(Connection& connection);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

 private:
  void settle();
  void rollBack() noexcept;

  Connection& connection_;
  std::string id_;  // what a server calls it
  bool done_ = false;
};

}  // namespace steadyturn
