// Single changes to a shop's file, drawn at random: what somebody with the file might do, with and without
// knowing how the program writes it.
#pragma once

#include <cstdint>
#include <optional>
#include <random>
#include <string>

#include "raw_shop.h"

namespace steadyturn {

// What is needed to see a change: the file alone, or what somebody outside the shop has written down.
enum class Seen { ByTheFile, WithACheckpoint };

// Where a fault must point: to the record, by name or by its entry.
struct Done {
  std::string what;        // for the test's own messages
  std::string record;      // "check 12"
  std::int64_t entry = 0;  // of that record
  Seen seen = Seen::ByTheFile;
};

class Tampering {
 public:
  // `signedTo`: the entry of the last signature.
  Tampering(RawShop& shop, std::int64_t signedTo, std::uint64_t seed)
      : shop_(shop), signedTo_(signedTo), random_(seed) {}
  // One change that took; tries till the engine lets one pass.
  Done once();

 private:
  struct Table;
  struct Row {
    const Table* table;
    std::string where;  // a condition that picks it
    std::string record;
    std::int64_t entry;
  };

  std::size_t below(std::size_t count) { return std::uniform_int_distribution<std::size_t>(0, count - 1)(random_); }
  const Table& anyTable();
  Row anyRow(const Table& table);
  std::string anyColumn(const Table& table);
  std::string changed(const Row& row, const std::string& column);
  Done done(const std::string& what, const Row& row) const;

  std::optional<Done> changeCell();
  std::optional<Done> removeRow();
  std::optional<Done> swapCells();
  std::optional<Done> insertRow();
  std::optional<Done> cutTail();
  std::optional<Done> shiftDate();
  std::optional<Done> swapRows();
  std::optional<Done> swapEntries();
  std::optional<Done> cutTailWithRecords();
  std::optional<Done> rebuildLog();

  RawShop& shop_;
  std::int64_t signedTo_;
  std::mt19937_64 random_;
};

}  // namespace steadyturn
