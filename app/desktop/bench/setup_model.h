// A bench set-up as it is being typed (ISO 6789-2): the runs on one tool that yield the spans for all tools of its
// model. A run may be left out, or its span typed with its basis instead. Each tool keeps what is typed about it
// until it is saved, on disk too.
#pragma once

#include <QObject>
#include <QTimer>
#include <map>
#include <optional>
#include <set>
#include <vector>

#include "draft_keeper.h"
#include "open_shop.h"
#include "setup_draft.h"

namespace steadyturn {

// What a run comes to as it stands.
struct RunFigures {
  std::vector<std::optional<double>> means;  // one a series; of the readings typed so far
  std::optional<double> span;                // %; of the series begun so far, or as typed
  bool complete = false;                     // as many series and readings as the standard asks
};

class SetupModel : public QObject {
  Q_OBJECT
 public:
  SetupModel(OpenShop& shop, DraftKeeper& keeper, QObject* parent = nullptr);

  // Puts the present set-up aside and takes up the tool's own, if it has one: with the day, reference and unit it was
  // typed with. A new one begins with what the bench has at hand.
  Result<void> begin(const std::string& tool, const QString& reference, const QString& by, Date date, Unit unit);
  const std::optional<BenchSetupPlan>& plan() const { return plan_; }
  const std::string& tool() const { return tool_; }
  const SetupDraft& draft() const { return draft_; }
  const TypedRun& run(SetupRun run) const { return draft_.run(run); }
  RunFigures figures(SetupRun run) const;
  bool typed() const { return draft_.typed(); }  // anything at all, for the tool at hand
  // The reference on the bench where the set-up was typed with another one; empty where they agree.
  QString otherReference() const;

  void readOn(const QString& reference);
  void setBasis(const QString& basis);
  void setSeries(SetupRun run, std::size_t count);  // readings in the series that stay are kept
  void setReading(SetupRun run, std::size_t series, std::size_t reading, const QString& typed);
  void setSpan(SetupRun run, const QString& typed);
  SetupDraft clear();  // returns what stood there, for putting back
  void putBack(const SetupDraft& draft);

  Result<BenchSetup> save();

  // A reading, or something else that is worth keeping, is finished: all that is typed goes to disk.
  void keepDraft();
  // The same when the window closes. False: it is not sure that everything is on disk.
  bool keepForNextStart();
  void discardDraft(const std::string& tool);  // one that waits
  std::vector<WaitingDraft> waitingDrafts() const;
  const Problems& draftTrouble() const { return draftTrouble_; }  // found: the tool whose draft can't be read
  std::vector<std::string> unsavedTools() const;                  // with anything typed and not saved

 signals:
  void begun();
  void seriesChanged(steadyturn::SetupRun run);
  void changed();

 private:
  void loadDrafts();
  void beginAnew();
  void touched();

  OpenShop& shop_;
  DraftKeeper& keeper_;
  std::string tool_;
  std::optional<BenchSetupPlan> plan_;
  SetupDraft heading_;  // of the bench: what a new set-up begins with
  SetupDraft draft_;
  std::map<std::string, SetupDraft> putAside_;
  QTimer keepSoon_;  // what stands half typed is kept after a moment too
  bool touched_ = false;
  Problems draftTrouble_;
  std::set<std::string> onDisk_;  // tools with a draft there
};

}  // namespace steadyturn
