#include "draft_table.h"

namespace steadyturn {
namespace {

std::string stored(DraftOf what) { return what == DraftOf::Check ? "check" : "set-up"; }

}  // namespace

DraftTable::DraftTable(Database& database)
    : database_(database),
      save_(database,
            "INSERT INTO bench_draft (tool, what, draft, saved_at) VALUES (?, ?, ?, ?) "
            "ON CONFLICT (tool, what) DO UPDATE SET draft = excluded.draft, saved_at = excluded.saved_at"),
      remove_(database, "DELETE FROM bench_draft WHERE tool = ? AND what = ?") {}

void DraftTable::save(const StoredDraft& draft) {
  save_.run(draft.tool, stored(draft.what), draft.draft, draft.savedAt);
}

void DraftTable::remove(const std::string& tool, DraftOf what) { remove_.run(tool, stored(what)); }

std::vector<StoredDraft> DraftTable::all(DraftOf what) const {
  Statement query(database_,
                  "SELECT tool, draft, saved_at FROM bench_draft WHERE what = ? ORDER BY saved_at DESC, tool");
  query.run(stored(what));
  std::vector<StoredDraft> drafts;
  while (query.next())
    drafts.push_back({.tool = query.text(0), .what = what, .draft = query.text(1), .savedAt = query.text(2)});
  return drafts;
}

}  // namespace steadyturn
