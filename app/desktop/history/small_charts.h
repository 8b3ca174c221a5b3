// Many histories side by side, each as a small chart with its name, its standing and its one sentence. A list: arrows
// walk, Enter or a double click opens one, only what is on screen is drawn.
#pragma once

#include <QListView>
#include <optional>
#include <vector>

#include "looks.h"
#include "small_chart.h"

namespace steadyturn {

struct SmallStory {
  HistoryData history;
  QString title;
  std::optional<Look> look;
};

class SmallCharts : public QListView {
  Q_OBJECT
 public:
  explicit SmallCharts(QWidget* parent = nullptr);
  ~SmallCharts() override;
  void show(std::vector<SmallStory> stories);
  const std::vector<SmallStory>& stories() const;

 signals:
  void opened(int row);

 private:
  class Stories;
  Stories* model_;
};

}  // namespace steadyturn
