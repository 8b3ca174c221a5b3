// Accounts: what happened to each, as evidence (INSERT only), and beside it what PINs are held against, which
// changes.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "account.h"
#include "ledger.h"
#include "proven_rows.h"

namespace steadyturn {

struct AccountEvent {
  std::string account;  // empty for CodeMade
  AccountChange change = AccountChange::Added;
  std::optional<AccountRole> role{};  // the new one
  std::string secretHash{};           // the new one, as it is kept; empty where it stays
};

// What a PIN is held against, and the wrong tries in a row.
struct AccountSecret {
  std::string hash;
  int failures = 0;
  std::string lastFailure;  // UTC instant
};

class AccountTable {
 public:
  AccountTable(Database& database, Ledger& ledger) : database_(database), ledger_(ledger) {}
  bool any() const;  // without one the shop is open to whoever has the file
  std::optional<Account> find(const std::string& name) const;
  std::vector<Account> all() const;  // in the order they were added
  // Ledger kind "account"; its facts hold no hash of a PIN, only a commitment to it. An account is added once
  // (StoreError, Conflict).
  void add(const AccountEvent& event, const EntryStamp& stamp);

  std::optional<AccountSecret> secret(const std::string& account) const;
  void setFailures(const std::string& account, int failures, const std::string& at);

  // For a proof: also that each secret is the one that its newest event set.
  ProvenRows proven() const;

 private:
  Database& database_;
  Ledger& ledger_;
};

}  // namespace steadyturn
