// One connection to a shop's database, used by one thread. Opening is a small state machine; see OpenOutcome.
#pragma once

#include <QSqlDatabase>
#include <string>
#include <vector>

#include "store_error.h"

namespace steadyturn {

enum class OpenOutcome {
  Created,   // a new shop
  UpToDate,  // nothing to do
  Upgraded   // migrations were run; a copy of the file as it was stands beside it
};

class Database {
 public:
  // A new shop at `address` (a file). Problems: CannotCreate when it exists already or can't be written.
  static Result<Database> create(const std::string& address);
  // An existing shop. Problems (Unavailable, FileMissing): not a database, a directory, not a shop of ours, newer than the
  // program (refused, untouched), a migration whose text differs from the one that was run, busy, unreadable.
  // A shop this user can't write is opened to be read.
  static Result<Database> open(const std::string& address);

  Database(Database&&) noexcept;
  Database& operator=(Database&&) noexcept;
  ~Database();

  OpenOutcome outcome() const { return outcome_; }
  bool readOnly() const { return readOnly_; }
  const std::string& address() const { return address_; }
  int schemaVersion() const { return version_; }
  QSqlDatabase handle() const;

 private:
  Database() = default;
  std::string connection_;  // the name Qt knows it by; unique
  std::string address_;
  OpenOutcome outcome_ = OpenOutcome::UpToDate;
  bool readOnly_ = false;
  int version_ = 0;
};

// A transaction that takes the write lock at once; rolled back unless committed. A statement that failed inside makes commit
// refuse, on every engine. Throws StoreError.
class Transaction {
 public:
  explicit Transaction(Database& database);
  ~Transaction();
  Transaction(const Transaction&) = delete;
  Transaction& operator=(const Transaction&) = delete;
  void commit();

 private:
  Database& database_;
  bool done_ = false;
};

}  // namespace steadyturn
