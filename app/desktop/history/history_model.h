// One tool's history without its window: its set-points, its checks, the material of its chart, and the files made of
// them.
#pragma once

#include <QObject>
#include <optional>
#include <vector>

#include "checks_table.h"
#include "open_shop.h"
#include "worker.h"

namespace steadyturn {

struct ToolStory {
  std::vector<StatedTorque> targets;  // rising
  std::vector<Check> checks;          // oldest first
  HistoryData data;                   // of the set-point asked for, or of the one that decides
};

class HistoryModel : public QObject {
  Q_OBJECT
 public:
  explicit HistoryModel(OpenShop& shop, QObject* parent = nullptr);

  Result<std::vector<Tool>> tools() const { return shop_.shop().tools(); }
  void pick(const std::string& tool, std::optional<StatedTorque> target = {});
  const std::string& tool() const { return tool_; }
  const std::optional<ToolStory>& story() const { return story_; }
  ChecksTable& checks() { return table_; }
  bool mayCorrect(std::int64_t check) const;  // of this tool, and not replaced by a correction yet
  bool working() const { return working_; }

  void writeCertificate(std::int64_t check, const QString& path);  // answers with written() or refused()

 signals:
  void toolsChanged();
  void workingChanged(bool working);
  void told();  // story() is new, or gone
  void refused(const Problems& problems);
  void written(const QString& path);

 private:
  void take(Result<ToolStory> story);
  void setWorking(bool working);

  OpenShop& shop_;
  std::string tool_;
  std::optional<StatedTorque> target_;
  std::optional<ToolStory> story_;
  ChecksTable table_;
  bool working_ = false;
  Ticket asking_;
  Worker worker_;
};

}  // namespace steadyturn
