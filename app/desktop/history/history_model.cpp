#include "history_model.h"

#include <algorithm>

#include "dcc.h"
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

Result<IssuedFile> issueCertificate(Shop& shop, std::int64_t check, const QString& path, const QString& passphrase) {
  const Result<CertificateData> data =
      passphrase.isEmpty() ? shop.certificate(check) : signedCertificate(shop, check, toText(passphrase));
  if (!data) return tl::unexpected(data.error());
  const bool machine = path.endsWith(QLatin1String(".xml"), Qt::CaseInsensitive);
  return issueFile(shop, {.what = "certificate", .id = std::to_string(check)}, path, [&](QIODevice& out) {
    return machine ? writeDcc(*data, out) : writePdf(buildCertificate(*data), out);
  });
}

}  // namespace

HistoryModel::HistoryModel(OpenShop& shop, QObject* parent) : QObject(parent), shop_(shop), worker_(shop) {
  connect(&shop, &OpenShop::toolsChanged, this, [this] {
    emit toolsChanged();
    if (tool_.empty()) again();
  });
  connect(&shop, &OpenShop::checksChanged, this, [this](const QString& tool) {
    if (tool_.empty() || tool.isEmpty() || toText(tool) == tool_) again();
  });
}

void HistoryModel::pick(const std::string& tool, std::optional<StatedTorque> target) {
  dropAsked();
  if (tool_ != tool) targets_.clear();
  tool_ = tool;
  target_ = target;
  asked_ = Asked::Story;
  asking_ = worker_.run<ToolStory>([tool, target](Shop& shop, const Progress&) { return tell(shop, tool, target); },
                                   [this](Result<ToolStory> story) { take(std::move(story)); });
}

void HistoryModel::dropAsked() {
  if (asking_) asking_->drop();
  setWorking(true);
}

void HistoryModel::again() {
  switch (asked_) {
    case Asked::Nothing:
      return;
    case Asked::Fleet:
      return askFleet();
    case Asked::SetPoints:
      return askSetPoints();
    case Asked::Story:
      return pick(tool_, target_);
  }
}

void HistoryModel::askFleet() {
  dropAsked();
  tool_.clear();
  target_.reset();
  targets_.clear();
  story_.reset();
  table_.show({}, {});
  asked_ = Asked::Fleet;
  asking_ = worker_.run<std::vector<FleetStory>>(
      [](Shop& shop, const Progress& progress) { return shop.fleet(shop.today(), progress); },
      [this](Result<std::vector<FleetStory>> fleet) {
        setWorking(false);
        if (!fleet) return void(emit refused(fleet.error()));
        fleet_ = std::move(*fleet);
        emit told();
      });
}

void HistoryModel::askSetPoints() {
  dropAsked();
  asked_ = Asked::SetPoints;
  asking_ = worker_.run<std::vector<HistoryData>>(
      [tool = tool_](Shop& shop, const Progress&) { return shop.histories(tool, shop.today()); },
      [this](Result<std::vector<HistoryData>> all) {
        setWorking(false);
        if (!all) return void(emit refused(all.error()));
        setPoints_ = std::move(*all);
        emit told();
      });
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
  targets_ = story_->targets;
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

bool HistoryModel::canSign() const {
  const Result<bool> key = hasSigningKey(shop_.shop());
  return key && *key && !shop_.shop().readOnly();
}

void HistoryModel::writeCertificate(std::int64_t check, const QString& path, const QString& passphrase) {
  worker_.run<IssuedFile>(
      [=](Shop& shop, const Progress&) { return issueCertificate(shop, check, path, passphrase); },
      [this](Result<IssuedFile> done) {
        if (!done) return void(emit refused(done.error()));
        emit written(*done);
      });
}

}  // namespace steadyturn
