// A bench set-up as it is being typed (ISO 6789-2): the runs on one tool that yield the spans for all tools of its
// model. A run may be left out, or its span typed with its basis instead.
#pragma once

#include <QObject>
#include <QStringList>
#include <array>
#include <map>
#include <optional>
#include <vector>

#include "open_shop.h"

namespace steadyturn {

struct TypedRun {
  std::vector<QStringList> series;  // as typed
  QString span;                     // typed instead of measured, %

  int typedReadings() const;
};

// What a run comes to as it stands.
struct RunFigures {
  std::vector<std::optional<double>> means;  // one a series; of the readings typed so far
  std::optional<double> span;                // %; of the series begun so far, or as typed
  bool complete = false;                     // as many series and readings as the standard asks
};

class SetupModel : public QObject {
  Q_OBJECT
 public:
  explicit SetupModel(OpenShop& shop, QObject* parent = nullptr);

  // What was typed for a tool in a unit stays until it is saved, whatever is begun between.
  Result<void> begin(const std::string& tool, const QString& reference, const QString& by, Date date, Unit unit);
  const std::optional<BenchSetupPlan>& plan() const { return plan_; }
  const std::string& tool() const { return tool_; }
  QString basis() const { return basis_; }
  QString target() const { return target_; }  // in unit()
  Unit unit() const { return unit_; }
  QString reference() const { return reference_; }
  const TypedRun& run(SetupRun run) const { return runs_[static_cast<std::size_t>(run)]; }
  RunFigures figures(SetupRun run) const;
  bool typed() const;                             // anything at all, for the tool at hand
  std::vector<std::string> unsavedTools() const;  // with anything typed and not saved

  void setReference(const QString& id) { reference_ = id; }
  void setBasis(const QString& basis) { basis_ = basis; }
  void setSeries(SetupRun run, std::size_t count);  // readings in the series that stay are kept
  void setReading(SetupRun run, std::size_t series, std::size_t reading, const QString& typed);
  void setSpan(SetupRun run, const QString& typed);

  Result<BenchSetup> save();

 signals:
  void begun();
  void seriesChanged(steadyturn::SetupRun run);
  void changed();

 private:
  TypedRun& at(SetupRun run) { return runs_[static_cast<std::size_t>(run)]; }
  void clear();
  void takeUp(const std::string& tool, Unit unit);

  OpenShop& shop_;
  std::string tool_;
  std::optional<BenchSetupPlan> plan_;
  QString reference_, by_, target_, basis_;
  Date date_{};
  Unit unit_ = Unit::NewtonMetre;
  using Runs = std::array<TypedRun, allSetupRuns.size()>;
  Runs runs_;
  struct PutAside {
    Runs runs;
    QString basis;
  };
  std::map<std::pair<std::string, Unit>, PutAside> putAside_;
};

}  // namespace steadyturn
