#include "draft_text.h"
#include "inside.h"
#include "writing.h"

namespace steadyturn {

Result<void> Shop::saveDraft(const CheckDraft& draft) {
  if (const auto found = tool(draft.tool); !found) return tl::unexpected(found.error());
  return guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::RecordCheck);
    inside_->drafts.save({.tool = draft.tool, .draft = writeDraft(draft), .savedAt = inside_->now()});
    writing.commit();
    return {};
  });
}

Result<std::vector<SavedDraft>> Shop::drafts() const {
  return guarded([&]() -> Result<std::vector<SavedDraft>> {
    std::vector<SavedDraft> saved;
    for (const auto& stored : inside_->drafts.all()) {
      auto draft = parseDraft(stored.draft);
      if (!draft) {
        return refuse({.kind = ProblemKind::Unavailable,
                       .field = "draft",
                       .found = stored.tool,
                       .accepted = "a draft that can be read; discard this one to go on without it"});
      }
      saved.push_back({.draft = std::move(*draft), .savedAt = stored.savedAt});
    }
    return saved;
  });
}

Result<void> Shop::discardDraft(const std::string& id) {
  return guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::RecordCheck);
    inside_->drafts.remove(id);
    writing.commit();
    return {};
  });
}

}  // namespace steadyturn
