// The bay without its window: what is looked for, the fastener at hand, the wrenches to take, the tightening to
// record.
#pragma once

#include <QObject>
#include <optional>

#include "fastener_list.h"
#include "open_shop.h"
#include "options_table.h"
#include "refused_table.h"
#include "worker.h"

namespace steadyturn {

struct TypedTightening {
  QString job, vehicle, setting, by;
  Date date{};
  bool seatChecked = false;
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
  Date today() const { return shop_.shop().today(); }

  Result<Tightening> record(const Option& option, const TypedTightening& typed);

 signals:
  void foundChanged();
  void fastenerChanged();
  void choiceChanged();  // options(), refused(), warnings()
  void workingChanged(bool working);
  void troubled(const Problems& problems);

 private:
  struct Answer {
    FastenerChoice choice;
    std::map<std::string, QString> descriptions;
  };
  void rank();
  void take(Answer answer);
  void setWorking(bool working);

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
  Ticket finding_, ranking_;
  // Looking for the next fastener does not wait for the ranking of the last one.
  Worker finder_, ranker_;
};

}  // namespace steadyturn
