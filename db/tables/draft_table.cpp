#include "draft_table.h"

namespace steadyturn {

DraftTable::DraftTable(Database& database)
    : database_(database),
      save_(database,
            "INSERT INTO check_draft (tool, draft, saved_at) VALUES (?, ?, ?) "
            "ON CONFLICT (tool) DO UPDATE SET draft = excluded.draft, saved_at = excluded.saved_at"),
      remove_(database, "DELETE FROM check_draft WHERE tool = ?") {}

void DraftTable::save(const StoredDraft& draft) { save_.run(draft.tool, draft.draft, draft.savedAt); }

void DraftTable::remove(const std::string& tool) { remove_.run(tool); }

std::vector<StoredDraft> DraftTable::all() const {
  Statement query(database_, "SELECT tool, draft, saved_at FROM check_draft ORDER BY saved_at DESC, tool");
  query.run();
  std::vector<StoredDraft> drafts;
  while (query.next()) drafts.push_back({.tool = query.text(0), .draft = query.text(1), .savedAt = query.text(2)});
  return drafts;
}

}  // namespace steadyturn
