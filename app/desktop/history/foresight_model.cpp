#include "foresight_model.h"

#include "chart_file.h"

namespace steadyturn {
namespace {

struct Answer {
  BacktestReport past;
  ForesightReportData data;
};

Result<Answer> answer(const Shop& shop, const std::string& scope, double target,
                      const std::optional<BacktestReport>& known, const Progress& progress) {
  const Date today = shop.today();
  Result<BacktestReport> past = known ? Result<BacktestReport>(*known) : backtestShop(shop, scope, today, progress);
  if (!past) return tl::unexpected(past.error());
  IntervalQuestion question{.scope = scope, .asOf = today};
  question.target = target;
  question.andKept = true;
  Result<IntervalReport> whatIf = analyseInterval(shop, question);
  if (!whatIf) return tl::unexpected(whatIf.error());
  ForesightReportData data{.shopName = shop.name(),
                           .asOf = today,
                           .scores = past->all,
                           .whatIf = {.scope = whatIf->scope,
                                      .intervalNow = whatIf->policyDays,
                                      .target = target,
                                      .keepsTarget = whatIf->recommendedDays,
                                      .assumed = whatIf->assumed,
                                      .risks = std::move(whatIf->risks)},
                           .tools = whatIf->tools.size(),
                           .observed = whatIf->observed,
                           .assumption = whatIf->assumption,
                           .methods = std::move(whatIf->methods)};
  return Answer{std::move(*past), std::move(data)};
}

}  // namespace

ForesightModel::ForesightModel(OpenShop& shop, QObject* parent) : QObject(parent), shop_(shop), worker_(shop) {
  // What is on record has changed: the next question is answered from it anew.
  connect(&shop, &OpenShop::toolsChanged, this, [this] { past_.reset(); });
  connect(&shop, &OpenShop::checksChanged, this, [this] { past_.reset(); });
}

void ForesightModel::ask(const std::string& scope, double target) {
  drop();
  if (scope != scope_) past_.reset();
  scope_ = scope;
  setWorking(true);
  asking_ = worker_.run<Answer>(
      [=, known = past_](Shop& shop, const Progress& progress) {
        return answer(shop, scope, target, known, progress);
      },
      [this](Result<Answer> done) {
        setWorking(false);
        if (!done) {
          found_.reset();
          emit told();
          return void(emit refused(done.error()));
        }
        past_ = std::move(done->past);
        found_ = std::move(done->data);
        emit told();
      },
      [this](double part) { emit progressed(part); });
}

void ForesightModel::drop() {
  if (asking_) asking_->drop();
  setWorking(false);
}

void ForesightModel::setWorking(bool working) {
  if (working_ == working) return;
  working_ = working;
  emit workingChanged(working);
}

ChartModel ForesightModel::chart(Chart chart) const {
  switch (chart) {
    case Chart::Risk:
      return riskChart(found_->whatIf);
    case Chart::Effort:
      return effortChart(found_->whatIf);
    case Chart::Coverage:
      break;
  }
  return coverageChart(found_->scores, found_->whatIf.scope);
}

Result<IssuedFile> ForesightModel::write(Chart chart, const QString& path) {
  return writeChartOrReport(
      shop_.shop(), {.what = "interval", .id = found_->whatIf.scope},
      {.chart = [&] { return this->chart(chart); }, .report = [&] { return buildForesightReport(*found_); }}, path);
}

}  // namespace steadyturn
