// The inner hashes that the shop keeps of its tree, held against the tree that its entries make.
#pragma once

#include "merkle.h"
#include "record_match.h"
#include "statement.h"

namespace steadyturn {

class TreeComparison {
 public:
  TreeComparison(Database& database, ReportFault report);
  // A complete subtree of the entries' tree, as GrowingTree tells of it.
  void completed(int level, std::uint64_t position, const Hash& root);
  // After the last entry: hashes of subtrees that the ledger does not have.
  void finish();

 private:
  // The kept rows of one level in their order.
  struct Level {
    Statement rows;
    bool more = false;
  };
  void foreign(int level, Level& kept);

  Database& database_;
  ReportFault report_;
  bool any_ = false;  // a shop of an older program has none until its ledger grows
  std::map<int, Level> levels_;
};

}  // namespace steadyturn
