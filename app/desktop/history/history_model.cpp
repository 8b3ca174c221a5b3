#include "history_model.h"

#include <algorithm>

#include "save_file.h"
#include "text.h"
#include "writers.h"

namespace steadyturn {
namespace {

Result<ToolStory> tell(const Shop& shop, const std::string& tool, std::optional<StatedTorque> target) {
  const Date today = shop.today();
  const Result<ToolDrift> drift = shop.drift(tool, today);
  if (!drift) return tl::unexpected(drift.error());
  ToolStory story;
  for (const DriftSeries& series : drift->series) story.targets.push_back(series.target);
  Result<std::vector<Check>> checks = shop.checksOf(tool);
  if (!checks) return tl::unexpected(checks.error());
  story.checks = std::move(*checks);
  if (story.targets.empty()) {
    story.data.tool = drift->tool;
    return story;
  }
  Result<HistoryData> data = shop.history(tool, target ? *target : drift->series[drift->worst].target, today);
  if (!data) return tl::unexpected(data.error());
  story.data = std::move(*data);
  return story;
}

Result<void> writeCertificatePdf(const Shop& shop, std::int64_t check, const QString& path) {
  const Result<CertificateData> data = shop.certificate(check);
  if (!data) return tl::unexpected(data.error());
  return saveFile(path, [&](QIODevice& out) { return writePdf(buildCertificate(*data), out); });
}

}  // namespace

HistoryModel::HistoryModel(OpenShop& shop, QObject* parent) : QObject(parent), shop_(shop), worker_(shop.address()) {
  connect(&shop, &OpenShop::toolsChanged, this, &HistoryModel::toolsChanged);
  connect(&shop, &OpenShop::checksChanged, this, [this](const QString& tool) {
    if (!tool_.empty() && (tool.isEmpty() || toText(tool) == tool_)) pick(tool_, target_);
  });
}

void HistoryModel::pick(const std::string& tool, std::optional<StatedTorque> target) {
  if (asking_) asking_->drop();
  tool_ = tool;
  target_ = target;
  setWorking(true);
  asking_ = worker_.run<ToolStory>([tool, target](Shop& shop, const Progress&) { return tell(shop, tool, target); },
                                   [this](Result<ToolStory> story) { take(std::move(story)); });
}

void HistoryModel::take(Result<ToolStory> story) {
  setWorking(false);
  if (!story) {
    story_.reset();
    table_.show({}, {});
    emit told();
    emit refused(story.error());
    return;
  }
  story_ = std::move(*story);
  table_.show(story_->checks, story_->data.target);
  emit told();
}

void HistoryModel::setWorking(bool working) {
  if (working_ == working) return;
  working_ = working;
  emit workingChanged(working);
}

bool HistoryModel::mayCorrect(std::int64_t check) const {
  return story_ && std::ranges::any_of(story_->checks, [check](const Check& one) {
           return one.id == check && !one.correctedBy.has_value();
         });
}

void HistoryModel::writeCertificate(std::int64_t check, const QString& path) {
  worker_.run<QString>(
      [check, path](Shop& shop, const Progress&) -> Result<QString> {
        if (Result<void> done = writeCertificatePdf(shop, check, path); !done) return tl::unexpected(done.error());
        return path;
      },
      [this](Result<QString> done) {
        if (!done) return void(emit refused(done.error()));
        emit written(*done);
      });
}

}  // namespace steadyturn
