#include "draft_keeper.h"

#include <chrono>

namespace steadyturn {
namespace {

// What a person does not notice between a key and its answer.
constexpr int moment = 80;
// What a person waits for at the end of the program, rather than lose a reading.
constexpr int longMoment = 3000;

}  // namespace

DraftKeeper::DraftKeeper(OpenShop& shop, QObject* parent) : QObject(parent), worker_(shop) {
  // The connection is opened before the first reading is there to be kept.
  worker_.run<bool>([](Shop&, const Progress&) -> Result<bool> { return true; }, [](const Result<bool>&) {});
}

DraftKeeper::~DraftKeeper() { settle(longMoment); }

void DraftKeeper::keep(const CheckDraft& draft) {
  start([draft](Shop& shop) { return shop.saveDraft(draft); });
}

void DraftKeeper::keep(const BenchSetupDraft& draft) {
  start([draft](Shop& shop) { return shop.saveSetupDraft(draft); });
}

void DraftKeeper::discard(const std::string& tool) {
  start([tool](Shop& shop) { return shop.discardDraft(tool); });
}

void DraftKeeper::discardSetup(const std::string& tool) {
  start([tool](Shop& shop) { return shop.discardSetupDraft(tool); });
}

void DraftKeeper::start(std::function<Result<void>(Shop&)> write) {
  auto told = std::make_shared<std::promise<Outcome>>();
  last_ = told->get_future().share();
  worker_.run<bool>(
      [write = std::move(write), told](Shop& shop, const Progress&) -> Result<bool> {
        const Result<void> written = write(shop);
        told->set_value({written.has_value()});
        if (!written) return tl::unexpected(written.error());
        return true;
      },
      [this](const Result<bool>& written) {
        if (!written) emit failed(written.error());
      });
  settle(moment);
}

bool DraftKeeper::settle(int milliseconds) {
  if (!last_.valid()) return true;
  if (last_.wait_for(std::chrono::milliseconds(milliseconds)) != std::future_status::ready) return false;
  try {
    return last_.get().kept;
  } catch (const std::future_error&) {
    return false;  // the shop could not be opened a second time
  }
}

}  // namespace steadyturn
