#include "tree_nodes.h"

#include <vector>

#include "store_error.h"

namespace steadyturn {

namespace {

std::int64_t bound(std::uint64_t number) { return static_cast<std::int64_t>(number); }

}  // namespace

Hash asHash(const QByteArray& bytes) {
  Hash hash{};
  if (bytes.size() == static_cast<qsizetype>(hash.size())) std::copy(bytes.begin(), bytes.end(), hash.begin());
  return hash;
}

TreeNodes::TreeNodes(Database& database)
    : leaves_(database, "SELECT leaf FROM ledger WHERE seq > ? AND seq <= ? ORDER BY seq"),
      nodes_(database,
             "SELECT hash FROM tree_node WHERE level = ? AND position >= ? AND position < ? ORDER BY position"),
      newest_(database, "SELECT MAX(position) FROM tree_node WHERE level = ?"),
      insert_(database,
              "INSERT INTO tree_node (level, position, hash) VALUES (?, ?, ?) "
              "ON CONFLICT (level, position) DO UPDATE SET hash = excluded.hash") {}

std::uint64_t TreeNodes::countAt(int level) {
  newest_.run(level).next();
  const auto newest = newest_.optionalInteger(0);
  newest_.finish();
  return newest ? static_cast<std::uint64_t>(*newest) + 1 : 0;
}

void TreeNodes::grow(std::int64_t size) {
  const auto leaves = static_cast<std::uint64_t>(size);
  if (leaves % (1U << step) != 0) return;
  for (int level = step; leaves >> level != 0; level += step) {
    const auto wanted = leaves >> level;
    auto position = countAt(level);
    if (position >= wanted) return;  // the levels above have all of theirs, too
    for (; position < wanted; ++position) {
      const auto hash = fold(level, position);
      if (!hash) return;
      insert_.run(level, bound(position),
                  QByteArray(reinterpret_cast<const char*>(hash->data()), static_cast<qsizetype>(hash->size())));
    }
  }
}

std::optional<Hash> TreeNodes::kept(int level, std::uint64_t position) {
  if (level == 0) leaves_.run(bound(position), bound(position + 1));
  auto& rows = level == 0 ? leaves_ : nodes_.run(level, bound(position), bound(position + 1));
  if (!rows.next()) return std::nullopt;
  ++rowsRead_;
  const auto hash = asHash(rows.bytes(0));
  rows.finish();
  return hash;
}

Hash TreeNodes::node(int level, std::uint64_t position) {
  if (const auto hash = find(level, position)) return *hash;
  throw StoreError({.kind = ProblemKind::Unavailable,
                    .field = "shop",
                    .found = "a ledger in which an entry is missing",
                    .accepted = "a shop that is not damaged: verify it"});
}

std::optional<Hash> TreeNodes::find(int level, std::uint64_t position) {
  if (level % step == 0) {
    const auto hash = kept(level, position);
    if (hash || level == 0) return hash;
  }
  return fold(level, position);
}

// From the nearest level below that is kept: all its rows in one read, or, where a shop has none yet, one by one.
std::optional<Hash> TreeNodes::fold(int level, std::uint64_t position) {
  const int below = (level - 1) / step * step;
  const auto count = std::uint64_t{1} << (level - below);
  const auto first = position * count;
  auto& rows = below == 0 ? leaves_.run(bound(first), bound(first + count))
                          : nodes_.run(below, bound(first), bound(first + count));
  std::vector<Hash> children;
  while (rows.next()) children.push_back(asHash(rows.bytes(0)));
  rowsRead_ += children.size();
  if (children.size() == count) return rootOf(children);
  children.clear();
  for (auto child = first; child < first + count; ++child) {
    const auto hash = find(below, child);
    if (!hash) return std::nullopt;
    children.push_back(*hash);
  }
  return rootOf(children);
}

Hash ledgerRoot(Database& database, std::uint64_t size) {
  TreeNodes nodes(database);
  return rootOf(nodes.source(), {0, size});
}

}  // namespace steadyturn
