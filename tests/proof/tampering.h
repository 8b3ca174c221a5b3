// Single changes to a shop's file, drawn at random: what somebody with the file and no program might do.
#pragma once

#include <cstdint>
#include <optional>
#include <random>
#include <string>

#include "raw_shop.h"

namespace steadyturn {

// Where a fault must point: to the record, by name or by its entry.
struct Done {
  std::string what;        // for the test's own messages
  std::string record;      // "check 12"
  std::int64_t entry = 0;  // of that record
};

class Tampering {
 public:
  Tampering(RawShop& shop, std::uint64_t seed) : shop_(shop), random_(seed) {}
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
  std::optional<Done> swapEntries();

  RawShop& shop_;
  std::mt19937_64 random_;
};

}  // namespace steadyturn
