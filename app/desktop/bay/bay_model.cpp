#include "bay_model.h"

#include <QDir>
#include <QSaveFile>
#include <QStandardPaths>

#include "text.h"
#include "writers.h"

namespace steadyturn {

BayModel::BayModel(OpenShop& shop, QObject* parent) : QObject(parent), shop_(shop), finder_(shop), ranker_(shop) {
  connect(&shop, &OpenShop::toolsChanged, this, &BayModel::rank);
  connect(&shop, &OpenShop::fastenersChanged, this, [this] { find(words_); });
  readJobs();
  find({});
}

void BayModel::find(const QString& words) {
  words_ = words;
  if (finding_) finding_->drop();
  isFinding_ = true;
  finding_ = finder_.run<std::vector<Fastener>>(
      [typed = toText(words.simplified())](Shop& shop, const Progress&) {
        return shop.findFasteners(typed, mostFound);
      },
      [this](Result<std::vector<Fastener>> fasteners) {
        isFinding_ = false;
        if (!fasteners) return void(emit troubled(fasteners.error()));
        found_.show(std::move(*fasteners));
        emit foundChanged();
      });
}

void BayModel::choose(const Fastener& fastener) {
  if (fastener_ && fastener_->id == fastener.id && fastener_->number == fastener.number) return;
  fastener_ = fastener;
  warnings_.clear();
  options_.show({}, {});
  refused_.show({});
  emit fastenerChanged();
  rank();
}

void BayModel::setAdapter(const std::optional<Adapter>& adapter) {
  adapter_ = adapter;
  rank();
}

void BayModel::rank() {
  if (!fastener_) return;
  if (ranking_) ranking_->drop();
  setWorking(true);
  ranking_ = ranker_.run<Answer>(
      [id = fastener_->id, adapter = adapter_](Shop& shop, const Progress&) -> Result<Answer> {
        Result<FastenerChoice> choice = shop.choose(id, shop.today(), adapter);
        if (!choice) return tl::unexpected(choice.error());
        Answer answer{std::move(*choice), {}};
        if (const Result<std::vector<Tool>> tools = shop.tools()) {
          for (const Tool& tool : *tools) answer.descriptions[tool.id] = fromText(tool.description);
        }
        return answer;
      },
      [this](Result<Answer> answer) {
        setWorking(false);
        if (!answer) return void(emit troubled(answer.error()));
        take(std::move(*answer));
      });
}

void BayModel::take(Answer answer) {
  fastener_ = answer.choice.fastener;
  warnings_ = std::move(answer.choice.warnings);
  options_.show(std::move(answer.choice.choice.options), std::move(answer.descriptions));
  refused_.show(std::move(answer.choice.choice.refused));
  emit choiceChanged();
}

void BayModel::setWorking(bool working) {
  if (working_ == working) return;
  working_ = working;
  emit workingChanged(working);
}

Result<Tightening> BayModel::record(const Option& option, const TypedTightening& typed) {
  if (!fastener_) return refuse({.field = "fastener", .found = {}, .accepted = "find the fastener first"});
  Tightening tightening;
  tightening.job = toText(typed.job.trimmed());
  tightening.vehicle = toText(typed.vehicle.trimmed());
  tightening.date = typed.date;
  tightening.fastener = fastener_->id;
  tightening.fastenerNumber = fastener_->number;
  tightening.tool = option.tool;
  tightening.setting = asNumberText(typed.setting);
  tightening.unit = option.setting.unit;
  tightening.seatChecked = typed.seatChecked;
  tightening.by = toText(typed.by.trimmed());
  tightening.stagesDone = typed.stagesDone;
  tightening.sealRenewed = typed.sealRenewed;
  auto recorded = shop_.shop().recordTightening(tightening);
  if (recorded && sheet_ && recorded->job == sheet_->job.id) takeJob(fromText(sheet_->job.id));
  return recorded;
}

void BayModel::chooseMark(const std::string& id) {
  const auto newest = shop_.shop().fastener(id);
  if (!newest) return void(emit troubled(newest.error()));
  choose(*newest);
}

Result<Saved> BayModel::save(const Fastener& fastener, const std::optional<std::string>& reason) {
  auto saved = reason ? shop_.shop().reviseFastener(fastener, *reason) : shop_.shop().addFastener(fastener);
  if (!saved) return saved;
  emit shop_.fastenersChanged();
  chooseMark(fastener.id);
  return saved;
}

Result<Fastener> BayModel::approve(const QString& by) {
  if (!fastener_) return refuse({.field = "fastener", .found = {}, .accepted = "find the fastener first"});
  auto approved = shop_.shop().approveFastener(fastener_->id, toText(by.trimmed()));
  if (!approved) return approved;
  fastener_ = *approved;
  emit shop_.fastenersChanged();
  emit fastenerChanged();
  rank();
  return approved;
}

std::vector<ServiceList> BayModel::services() const {
  return shop_.shop().services().value_or(std::vector<ServiceList>{});
}

void BayModel::readJobs() {
  auto jobs = shop_.shop().openJobs();
  if (!jobs) return void(emit troubled(jobs.error()));
  jobs_ = std::move(*jobs);
  emit jobsChanged();
}

void BayModel::showSheet(std::optional<JobSheet> sheet) {
  sheet_ = std::move(sheet);
  jobLines_.show(sheet_ ? sheet_->lines : std::vector<JobLine>{});
  emit sheetChanged();
}

void BayModel::takeJob(const QString& id) {
  if (id.isEmpty()) return showSheet(std::nullopt);
  auto sheet = shop_.shop().jobSheet(toText(id));
  if (!sheet) return void(emit troubled(sheet.error()));
  showSheet(std::move(*sheet));
}

Result<void> BayModel::openJob(const JobDraft& draft) {
  auto opened = shop_.shop().openJob(draft);
  if (!opened) return tl::unexpected(opened.error());
  showSheet(std::move(*opened));
  readJobs();
  return {};
}

Result<void> BayModel::closeJob(const QString& reason) {
  if (!sheet_) return refuse({.field = "job", .found = {}, .accepted = "take a job's sheet first"});
  const auto closed = shop_.shop().closeJob(sheet_->job.id, today(), toText(by_.trimmed()), toText(reason.trimmed()));
  if (!closed) return tl::unexpected(closed.error());
  showSheet(std::nullopt);
  readJobs();
  return {};
}

Result<QString> BayModel::writeSheet() const {
  if (!sheet_) return refuse({.field = "job", .found = {}, .accepted = "take a job's sheet first"});
  const auto data = shop_.shop().jobSheetData(sheet_->job.id);
  if (!data) return tl::unexpected(data.error());
  QString mark = fromText(sheet_->job.id);
  for (QChar& c : mark) {
    if (!c.isLetterOrNumber()) c = QLatin1Char('-');
  }
  const QDir folder(QStandardPaths::writableLocation(QStandardPaths::DocumentsLocation));
  folder.mkpath(QStringLiteral("."));
  QSaveFile file(folder.filePath(QStringLiteral("job-%1.pdf").arg(mark)));
  const auto failed = [&] {
    return refuse({.kind = ProblemKind::CannotCreate,
                   .field = {},
                   .found = toText(file.fileName()),
                   .accepted = toText(file.errorString())});
  };
  if (!file.open(QIODevice::WriteOnly)) return failed();
  if (auto written = writePdf(buildJobSheet(*data), file); !written) return tl::unexpected(written.error());
  if (!file.commit()) return failed();
  return file.fileName();
}

}  // namespace steadyturn
