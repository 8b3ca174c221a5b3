#include "account_table.h"

#include <sodium.h>

#include <array>
#include <nlohmann/json.hpp>

#include "stored_values.h"

namespace steadyturn {

namespace {

// Binds an entry to a stored hash without showing it.
std::string commitment(const std::string& secretHash) {
  if (secretHash.empty()) return {};
  std::array<unsigned char, crypto_hash_sha256_BYTES> digest{};
  crypto_hash_sha256(digest.data(), reinterpret_cast<const unsigned char*>(secretHash.data()), secretHash.size());
  std::array<char, 2 * digest.size() + 1> hex{};
  sodium_bin2hex(hex.data(), hex.size(), digest.data(), digest.size());
  return hex.data();
}

Facts accountFacts(const std::string& account, const std::string& change, const std::string& role,
                   const std::string& secret) {
  return {{"account", account}, {"change", change}, {"role", role}, {"secret", secret}};
}

constexpr const char* accounts =
    "SELECT a.account, l.at, "
    "(SELECT r.role FROM account_event r WHERE r.account = a.account AND r.role <> '' ORDER BY r.entry DESC LIMIT "
    "1), "
    "EXISTS (SELECT 1 FROM account_event c WHERE c.account = a.account AND c.change = 'closed') "
    "FROM account_event a JOIN ledger l ON l.seq = a.entry WHERE a.change = 'added'";

Account accountFrom(const Statement& row) {
  return {.name = row.text(0),
          .role = stored(parseRole(row.text(2)), row.text(2)),
          .open = row.integer(3) == 0,
          .since = row.text(1)};
}

}  // namespace

bool AccountTable::any() const { return Statement(database_, "SELECT 1 FROM account_event LIMIT 1").run().next(); }

std::optional<Account> AccountTable::find(const std::string& name) const {
  Statement row(database_, std::string(accounts) + " AND a.account = ?");
  if (!row.run(name).next()) return std::nullopt;
  return accountFrom(row);
}

std::vector<Account> AccountTable::all() const {
  std::vector<Account> all;
  Statement rows(database_, std::string(accounts) + " ORDER BY a.entry");
  rows.run();
  while (rows.next()) all.push_back(accountFrom(rows));
  return all;
}

void AccountTable::add(const AccountEvent& event, const EntryStamp& stamp) {
  const std::string change(writeAccountChange(event.change));
  const std::string role(event.role ? writeRole(*event.role) : "");
  const auto secret = commitment(event.secretHash);
  const auto entry = ledger_.append(stamp, "account", accountFacts(event.account, change, role, secret));
  Statement(database_, "INSERT INTO account_event (entry, account, change, role, secret) VALUES (?, ?, ?, ?, ?)")
      .run(entry, event.account, change, role, secret);
  if (event.secretHash.empty()) return;
  Statement(database_,
            "INSERT INTO account_secret (account, hash) VALUES (?, ?) ON CONFLICT (account) DO UPDATE SET hash = "
            "excluded.hash, failures = 0, last_failure = ''")
      .run(event.account, event.secretHash);
}

std::optional<AccountSecret> AccountTable::secret(const std::string& account) const {
  Statement row(database_, "SELECT hash, failures, last_failure FROM account_secret WHERE account = ?");
  if (!row.run(account).next()) return std::nullopt;
  return AccountSecret{.hash = row.text(0), .failures = storedInt(row, 1), .lastFailure = row.text(2)};
}

void AccountTable::setFailures(const std::string& account, int failures, const std::string& at) {
  Statement(database_, "UPDATE account_secret SET failures = ?, last_failure = ? WHERE account = ?")
      .run(failures, at, account);
}

ProvenRows AccountTable::proven() const {
  const RecordKind kind{.kind = "account", .name = {{"account", "account", 0}, {"change", "change", 1}}};
  return {
      database_, kind,
      "SELECT e.account, e.change, e.role, e.secret, e.entry, s.hash, e.secret <> '' AND NOT EXISTS (SELECT 1 FROM "
      "account_event n WHERE n.account = e.account AND n.entry > e.entry AND n.secret <> '') "
      "FROM account_event e LEFT JOIN account_secret s ON s.account = e.account ORDER BY e.entry",
      4, [](const Statement& row) {
        ProvenFacts made{.facts = accountFacts(row.text(0), row.text(1), row.text(2), row.text(3))};
        if (row.integer(6) != 0 && commitment(row.text(5)) != row.text(3)) {
          made.assay = [] { return std::string("what its PIN is held against was not set by this program"); };
        }
        return made;
      }};
}

}  // namespace steadyturn
