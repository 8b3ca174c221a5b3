// Every tool of the shop with where it stands today, as a table. The overview is made off the window's thread; until
// it is there the tools themselves stand in the table already, to be found, opened and taken to the bench.
#pragma once

#include <QAbstractTableModel>
#include <map>
#include <vector>

#include "open_shop.h"
#include "worker.h"

namespace steadyturn {

// What the deviation column paints: today's prediction with its interval, against the limit.
struct DeviationFigures {
  double predicted = 0;
  std::optional<Interval> interval;
  double limit = 0;
};

class CabinetModel : public QAbstractTableModel {
  Q_OBJECT
 public:
  enum Column {
    StandingColumn,
    ToolColumn,
    DescriptionColumn,
    RangeColumn,
    LastCheckColumn,
    DeviationColumn,
    DriftColumn,
    DueColumn,
    DecidesColumn,
    columns
  };
  static constexpr int figuresRole = Qt::UserRole + 10;  // DeviationFigures

  explicit CabinetModel(OpenShop& shop, QObject* parent = nullptr);

  void refresh();  // asks anew; the rows stay until the answer is there
  bool working() const { return working_; }
  bool known() const { return known_; }  // where the tools stand, not only which there are
  Date today() const { return today_; }
  const ToolOverview* at(int row) const;
  int rowOf(const std::string& tool) const;  // −1 when it is not there
  std::map<Standing, int> counts() const;

  Result<void> add(const Tool& tool);
  Result<void> hold(const std::string& tool, const std::string& reason);
  Result<void> release(const std::string& tool, const std::string& reason);
  Result<void> retire(const std::string& tool, const std::string& reason);
  // Under one name with the tools that it is like; empty: as maker, kind and maximum say.
  Result<void> group(const std::string& tool, const std::string& name);
  // The shop's own groups: the name by tool. Tools that the program groups are absent.
  const std::map<std::string, std::string>& groups() const { return groups_; }

  int rowCount(const QModelIndex& parent = {}) const override;
  int columnCount(const QModelIndex& parent = {}) const override;
  QVariant data(const QModelIndex& index, int role) const override;
  QVariant headerData(int section, Qt::Orientation orientation, int role) const override;

 signals:
  void workingChanged(bool working);
  void refused(const Problems& problems);
  void refreshed();

 private:
  void loadGroups();
  void take(std::vector<ToolOverview> rows);
  void setWorking(bool working);
  Result<void> told(Result<void> done);

  OpenShop& shop_;
  Date today_;
  std::vector<ToolOverview> rows_;
  std::map<std::string, std::string> groups_;
  bool working_ = false;
  bool known_ = false;
  Ticket asking_;
  Worker worker_;  // last: it ends before what its results touch
};

}  // namespace steadyturn

Q_DECLARE_METATYPE(steadyturn::DeviationFigures)
