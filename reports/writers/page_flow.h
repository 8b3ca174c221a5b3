// Content that flows over pages: what is drawn is kept until the number of pages is known.
#pragma once

#include <QFont>
#include <QPainter>
#include <QStringList>
#include <functional>
#include <vector>

#include "report_document.h"

namespace steadyturn {

// The area of a page that content may fill, in the painter's units.
struct PageArea {
  double left = 0, top = 0, width = 0, height = 0;
};

// One cell of a row: its lines and how they stand.
struct FlowCell {
  double left = 0, width = 0;
  QStringList lines;
  Align align = Align::Left;
  QFont font;
};

class PageFlow {
 public:
  using Draw = std::function<void(QPainter&)>;

  explicit PageFlow(PageArea area);

  double left() const { return area_.left; }
  double width() const { return area_.width; }
  double wholeUpTo() const { return area_.height / 2; }  // a row taller than this may be split
  double y() const { return y_; }                        // where the next thing begins

  void space(double height);  // dropped at the top of a page
  // Begins a new page unless `height` still fits; things taller than a page are left to be split.
  void keepTogether(double height);
  void newPage();
  // Draws something of a fixed height; `draw` gets where it stands.
  void block(double height, const std::function<void(QPainter&, QRectF)>& draw);
  // Draws a row of cells with `padding` above and below; splits it between lines where it is taller than a page.
  // `onNewPage` runs after each page that had to be begun (a table repeats its header there). Nothing is clipped.
  void row(const std::vector<FlowCell>& cells, double padding, bool rule,
           const std::function<void()>& onNewPage = {});
  double rowHeight(const std::vector<FlowCell>& cells, double padding) const;

  std::size_t pageCount() const { return pages_.size(); }
  void drawPage(std::size_t page, QPainter& painter) const;

 private:
  double bottom() const { return area_.top + area_.height; }
  void add(Draw draw);
  void rowPart(const std::vector<FlowCell>& cells, qsizetype from, qsizetype to, double padding, bool rule);

  PageArea area_;
  double y_;
  std::vector<std::vector<Draw>> pages_;
};

}  // namespace steadyturn
