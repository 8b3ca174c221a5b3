// One tool's history without its window: its set-points, its checks, the material of its chart, and the files made of
// them.
#pragma once

#include <QObject>
#include <optional>
#include <vector>

#include "checks_table.h"
#include "issue_file.h"
#include "open_shop.h"
#include "worker.h"

namespace steadyturn {

struct ToolStory {
  std::vector<StatedTorque> targets;  // rising
  std::vector<Check> checks;          // oldest first
  HistoryData data;                   // of the set-point asked for, or of the one that decides
};

// What the place looks at.
enum class Asked { Nothing, Fleet, SetPoints, Story };

class HistoryModel : public QObject {
  Q_OBJECT
 public:
  explicit HistoryModel(OpenShop& shop, QObject* parent = nullptr);

  Result<std::vector<Tool>> tools() const { return shop_.shop().tools(); }
  void pick(const std::string& tool, std::optional<StatedTorque> target = {});
  void askFleet();      // every tool; told() when it is there
  void askSetPoints();  // the picked tool's
  Asked asked() const { return asked_; }
  const std::string& tool() const { return tool_; }  // empty: none picked
  const std::vector<StatedTorque>& targets() const { return targets_; }
  const std::vector<FleetStory>& fleet() const { return fleet_; }
  const std::vector<HistoryData>& setPoints() const { return setPoints_; }
  Shop& shop() { return shop_.shop(); }
  const std::optional<ToolStory>& story() const { return story_; }
  ChecksTable& checks() { return table_; }
  bool mayCorrect(std::int64_t check) const;  // of this tool, and not replaced by a correction yet
  bool working() const { return working_; }

  // .pdf, or .xml for a Digital Calibration Certificate; with a passphrase under a checkpoint signed for it. Answers
  // with written() or refused().
  void writeCertificate(std::int64_t check, const QString& path, const QString& passphrase = {});
  bool canSign() const;  // the shop has a signing key

 signals:
  void toolsChanged();
  void workingChanged(bool working);
  void told();  // what was asked for is there, or gone
  void refused(const Problems& problems);
  void written(const IssuedFile& file);

 private:
  void take(Result<ToolStory> story);
  void again();
  void dropAsked();
  void setWorking(bool working);

  OpenShop& shop_;
  std::string tool_;
  std::optional<StatedTorque> target_;
  Asked asked_ = Asked::Nothing;
  std::optional<ToolStory> story_;
  std::vector<StatedTorque> targets_;
  std::vector<FleetStory> fleet_;
  std::vector<HistoryData> setPoints_;
  ChecksTable table_;
  bool working_ = false;
  Ticket asking_;
  Worker worker_;
};

}  // namespace steadyturn
