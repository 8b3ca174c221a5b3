#include "tree_comparison.h"

#include "tree_nodes.h"

namespace steadyturn {

namespace {

std::string nameOf(int level, std::uint64_t position) {
  return "the ledger's stored hash of entries " + std::to_string((position << level) + 1) + " to " +
         std::to_string((position + 1) << level);
}

}  // namespace

TreeComparison::TreeComparison(Database& database, ReportFault report)
    : database_(database), report_(std::move(report)) {
  Statement levels(database_, "SELECT DISTINCT level FROM tree_node");
  levels.run();
  while (levels.next()) {
    const auto level = static_cast<int>(levels.integer(0));
    Statement rows(database_, "SELECT position, hash FROM tree_node WHERE level = ? ORDER BY position");
    auto& kept = levels_.emplace(level, Level{.rows = std::move(rows)}).first->second;
    kept.more = kept.rows.run(level).next();
    any_ = true;
  }
}

void TreeComparison::foreign(int level, Level& kept) {
  report_(0, "the ledger's tree keeps a hash at level " + std::to_string(level) + ", place " + kept.rows.text(0) +
                 ", where there is none");
  kept.more = kept.rows.next();
}

void TreeComparison::completed(int level, std::uint64_t position, const Hash& root) {
  if (!any_ || level % TreeNodes::step != 0) return;
  const auto last = static_cast<std::int64_t>((position + 1) << level);
  const auto found = levels_.find(level);
  if (found == levels_.end()) {
    report_(last, nameOf(level, position) + " is missing");
    return;
  }
  auto& kept = found->second;
  const auto place = static_cast<std::int64_t>(position);
  while (kept.more && kept.rows.integer(0) < place) foreign(level, kept);
  if (!kept.more || kept.rows.integer(0) != place) {
    report_(last, nameOf(level, position) + " is missing");
    return;
  }
  if (asHash(kept.rows.bytes(1)) != root) report_(last, nameOf(level, position) + " is not what these entries give");
  kept.more = kept.rows.next();
}

void TreeComparison::finish() {
  for (auto& [level, kept] : levels_) {
    while (kept.more) foreign(level, kept);
  }
}

}  // namespace steadyturn
