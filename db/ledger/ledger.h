// The ledger: every piece of evidence and every change of state is one entry, appended in the transaction of the row
// it proves. An entry is canonical JSON (RFC 8785) without floats: decimals as text, integers, ASCII keys, NFC text;
// it is stored and hashed as bytes, never re-serialised. leaf = SHA-256(0x00 ‖ entry) (RFC 6962, 2.1).
#pragma once

#include <cstdint>
#include <nlohmann/json_fwd.hpp>
#include <string>
#include <string_view>

#include "database.h"
#include "statement.h"
#include "tree_nodes.h"

namespace steadyturn {

// Facts of an entry: strings, integers, booleans, null, arrays and objects of these. Not a float among them.
using Facts = nlohmann::json;

struct EntryStamp {
  std::string at;   // UTC, "2026-03-14T09:26:53.589Z"; given by the caller, the store has no clock
  std::string who;  // the account, or "" in an open shop
};

// One for each Database: it counts on within a transaction without asking the store again.
class Ledger {
 public:
  explicit Ledger(Database& database);
  // Appends within the transaction at hand: {"at","facts","kind","seq","who"}. Returns its sequence, counted from 1
  // without gaps. REQUIRES: a transaction (std::logic_error without one).
  std::int64_t append(const EntryStamp& stamp, std::string_view kind, Facts facts);
  std::int64_t size() const;
  // Makes what a shop of an older program lacks of its tree's inner hashes. Within a transaction.
  void completeTree();

 private:
  std::int64_t nextSequence();

  Database& database_;
  Statement insert_;
  TreeNodes nodes_;
  std::int64_t next_ = 0;
  std::uint64_t countedIn_ = 0;  // the transaction that next_ belongs to
};

// What an entry's bytes hold around its facts: before ‖ canonical facts ‖ after.
struct EntryFrame {
  std::string before, after;
};
EntryFrame entryFrame(std::int64_t sequence, const EntryStamp& stamp, std::string_view kind);

// SHA-256(0x00 ‖ entry): 32 bytes.
QByteArray leafHash(std::string_view entry);

// RFC 8785 bytes of `facts`. REQUIRES: no float and no key beyond ASCII inside (std::invalid_argument: a programming
// error), text in UTF-8.
std::string canonicalJson(const Facts& facts);

}  // namespace steadyturn
