#include "draft_text.h"
#include "inside.h"
#include "writing.h"

namespace steadyturn {

namespace {

Problem unreadable(const StoredDraft& draft) {
  return {.kind = ProblemKind::Unavailable,
          .field = "draft",
          .found = draft.tool,
          .accepted = "a draft that can be read; discard this one to go on without it"};
}

void keep(Shop::Inside& shop, Act act, StoredDraft draft) {
  Writing writing(shop, act);
  draft.savedAt = shop.now();
  shop.drafts.save(draft);
  writing.commit();
}

void drop(Shop::Inside& shop, Act act, const std::string& tool, DraftOf what) {
  Writing writing(shop, act);
  shop.drafts.remove(tool, what);
  writing.commit();
}

}  // namespace

Result<void> Shop::saveDraft(const CheckDraft& draft) {
  if (const auto found = tool(draft.tool); !found) return tl::unexpected(found.error());
  return guarded([&]() -> Result<void> {
    keep(*inside_, Act::RecordCheck,
         {.tool = draft.tool, .what = DraftOf::Check, .draft = writeDraft(draft), .savedAt = {}});
    return {};
  });
}

Result<void> Shop::saveSetupDraft(const BenchSetupDraft& draft) {
  if (const auto found = tool(draft.tool); !found) return tl::unexpected(found.error());
  return guarded([&]() -> Result<void> {
    keep(*inside_, Act::RecordSetup,
         {.tool = draft.tool, .what = DraftOf::Setup, .draft = writeSetupDraft(draft), .savedAt = {}});
    return {};
  });
}

Result<std::vector<SavedDraft>> Shop::drafts() const {
  return guarded([&]() -> Result<std::vector<SavedDraft>> {
    std::vector<SavedDraft> saved;
    for (const auto& stored : inside_->drafts.all(DraftOf::Check)) {
      auto draft = parseDraft(stored.draft);
      if (!draft) return refuse(unreadable(stored));
      saved.push_back({.draft = std::move(*draft), .savedAt = stored.savedAt});
    }
    return saved;
  });
}

Result<std::vector<BenchSetupDraft>> Shop::setupDrafts() const {
  return guarded([&]() -> Result<std::vector<BenchSetupDraft>> {
    std::vector<BenchSetupDraft> saved;
    for (const auto& stored : inside_->drafts.all(DraftOf::Setup)) {
      auto draft = parseSetupDraft(stored.draft);
      if (!draft) return refuse(unreadable(stored));
      saved.push_back(std::move(*draft));
    }
    return saved;
  });
}

Result<void> Shop::discardDraft(const std::string& id) {
  return guarded([&]() -> Result<void> {
    drop(*inside_, Act::RecordCheck, id, DraftOf::Check);
    return {};
  });
}

Result<void> Shop::discardSetupDraft(const std::string& id) {
  return guarded([&]() -> Result<void> {
    drop(*inside_, Act::RecordSetup, id, DraftOf::Setup);
    return {};
  });
}

}  // namespace steadyturn
