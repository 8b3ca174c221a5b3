// The schema's history: numbered scripts that stay as they are for ever, each run once in one transaction.
#pragma once

#include <span>
#include <string>
#include <string_view>

namespace steadyturn {

struct Connection;

struct Migration {
  int version;            // from 1, without gaps
  std::string_view name;  // "0001_shop"
  std::string_view sql;
};

// This program's, oldest first; embedded from db/migrations. A version means the same on both engines.
std::span<const Migration> sqliteMigrations();
std::span<const Migration> postgresMigrations();

// SHA-256 of the script, hex: a shop remembers what made it.
std::string checksum(const Migration& migration);

// The newest version the shop has, 0 without any. Throws StoreError where the shop's own list is not this program's
// (a script that differs, one that is unknown, a gap).
int appliedVersion(Connection& connection, std::span<const Migration> migrations);

// Runs one migration and writes its row, in one transaction; nothing when somebody else has done so meanwhile.
void apply(Connection& connection, const Migration& migration);
// The same within the transaction at hand.
void applyWithin(Connection& connection, const Migration& migration);

}  // namespace steadyturn
