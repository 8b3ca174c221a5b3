// What the shop's predictions are worth, without its window: whether earlier ones held, and what another checking
// interval would cost.
#pragma once

#include <QObject>
#include <optional>

#include "foresight_report.h"
#include "issue_file.h"
#include "open_shop.h"
#include "shop_fleet.h"
#include "worker.h"

namespace steadyturn {

class ForesightModel : public QObject {
  Q_OBJECT
 public:
  explicit ForesightModel(OpenShop& shop, QObject* parent = nullptr);

  // `scope` as for backtestShop; `target` a share. Answers with told() or refused(); a question that is still being
  // worked on is dropped.
  void ask(const std::string& scope, double target);
  void drop();
  const std::optional<ForesightReportData>& found() const { return found_; }
  bool working() const { return working_; }

  enum class Chart { Coverage, Risk, Effort };
  ChartModel chart(Chart chart) const;  // REQUIRES: found()
  // The ending chooses: .svg and .png the chart, on a light ground; .pdf and .csv the whole report. REQUIRES:
  // found().
  Result<IssuedFile> write(Chart chart, const QString& path);

 signals:
  void told();
  void refused(const Problems& problems);
  void workingChanged(bool working);
  void progressed(double part);

 private:
  void setWorking(bool working);

  OpenShop& shop_;
  std::optional<ForesightReportData> found_;
  std::optional<BacktestReport> past_;  // of the scope last asked for: another target does not change it
  std::string scope_;
  bool working_ = false;
  Ticket asking_;
  Worker worker_;
};

}  // namespace steadyturn
