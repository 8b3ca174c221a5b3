// The bay without its window: what is looked for, the fastener at hand, the wrenches to take, the tightening to
// record.
#pragma once

#include <QObject>
#include <optional>

#include "fastener_list.h"
#include "job_lines.h"
#include "open_shop.h"
#include "options_table.h"
#include "refused_table.h"
#include "worker.h"

namespace steadyturn {

struct TypedTightening {
  QString job, vehicle, setting, by;
  Date date{};
  bool seatChecked = false;
  std::optional<bool> sealRenewed;  // absent: there is none to renew
  std::optional<int> stagesDone;
};

class BayModel : public QObject {
  Q_OBJECT
 public:
  explicit BayModel(OpenShop& shop, QObject* parent = nullptr);

  void find(const QString& words);
  FastenerList& found() { return found_; }
  void choose(const Fastener& fastener);  // shows it at once; the wrenches follow
  void setAdapter(const std::optional<Adapter>& adapter);
  const std::optional<Fastener>& fastener() const { return fastener_; }
  const std::vector<std::string>& warnings() const { return warnings_; }
  OptionsTable& options() { return options_; }
  RefusedTable& refused() { return refused_; }
  bool working() const { return working_; }
  bool finding() const { return isFinding_; }
  Date today() const { return shop_.shop().today(); }

  // For the job in hand, if there is one: its sheet follows.
  Result<Tightening> record(const Option& option, const TypedTightening& typed);

  void chooseMark(const std::string& id);  // the newest revision of it
  // A new specification, or a new revision with a reason; it is at hand afterwards.
  Result<Saved> save(const Fastener& fastener, const std::optional<std::string>& reason);
  Result<Fastener> approve(const QString& by);
  FastenerQuestions questionsAbout(const Fastener& fastener) const { return shop_.shop().questionsAbout(fastener); }

  // Jobs that are open, and the sheet of the one in hand.
  const std::vector<JobRecord>& jobs() const { return jobs_; }
  std::vector<ServiceList> services() const;
  const std::optional<JobSheet>& sheet() const { return sheet_; }
  JobLines& jobLines() { return jobLines_; }
  void takeJob(const QString& id);  // empty: none
  Result<void> openJob(const JobDraft& draft);
  Result<void> closeJob(const QString& reason);
  Result<QString> writeSheet() const;  // as PDF; where it is
  void setBy(const QString& by) { by_ = by; }

 signals:
  void foundChanged();
  void fastenerChanged();
  void choiceChanged();  // options(), refused(), warnings()
  void workingChanged(bool working);
  void jobsChanged();
  void sheetChanged();
  void troubled(const Problems& problems);

 private:
  struct Answer {
    FastenerChoice choice;
    std::map<std::string, QString> descriptions;
  };
  void rank();
  void take(Answer answer);
  void setWorking(bool working);
  void readJobs();
  void showSheet(std::optional<JobSheet> sheet);

  static constexpr int mostFound = 200;
  OpenShop& shop_;
  QString words_;
  FastenerList found_;
  std::optional<Fastener> fastener_;
  std::optional<Adapter> adapter_;
  std::vector<std::string> warnings_;
  OptionsTable options_;
  RefusedTable refused_;
  bool working_ = false;
  std::vector<JobRecord> jobs_;
  std::optional<JobSheet> sheet_;
  JobLines jobLines_;
  QString by_;
  bool isFinding_ = false;
  Ticket finding_, ranking_;
  // Looking for the next fastener does not wait for the ranking of the last one.
  Worker finder_, ranker_;
};

}  // namespace steadyturn
