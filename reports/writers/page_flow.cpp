#include "page_flow.h"

#include <QFontMetricsF>
#include <algorithm>

namespace steadyturn {
namespace {

const QColor ruleColour(0xc3, 0xca, 0xd1);

double lineHeight(const QFont& font) { return QFontMetricsF(font).lineSpacing(); }

double tallestLine(const std::vector<FlowCell>& cells) {
  double tallest = 0;
  for (const auto& cell : cells) tallest = std::max(tallest, lineHeight(cell.font));
  return tallest;
}

qsizetype mostLines(const std::vector<FlowCell>& cells) {
  qsizetype most = 0;
  for (const auto& cell : cells) most = std::max(most, cell.lines.size());
  return most;
}

}  // namespace

PageFlow::PageFlow(PageArea area) : area_(area), y_(area.top), pages_(1) {}

void PageFlow::space(double height) {
  if (y_ > area_.top) y_ += height;
}

void PageFlow::newPage() {
  pages_.emplace_back();
  y_ = area_.top;
}

void PageFlow::keepTogether(double height) {
  if (y_ > area_.top && y_ + height > bottom()) newPage();
}

void PageFlow::add(Draw draw) { pages_.back().push_back(std::move(draw)); }

void PageFlow::block(double height, const std::function<void(QPainter&, QRectF)>& draw) {
  keepTogether(height);
  const QRectF place(area_.left, y_, area_.width, height);
  add([draw, place](QPainter& painter) { draw(painter, place); });
  y_ += height;
}

double PageFlow::rowHeight(const std::vector<FlowCell>& cells, double padding) const {
  return static_cast<double>(mostLines(cells)) * tallestLine(cells) + 2 * padding;
}

void PageFlow::row(const std::vector<FlowCell>& cells, double padding, bool rule,
                   const std::function<void()>& onNewPage) {
  const auto begin = [&] {
    newPage();
    if (onNewPage) onNewPage();
  };
  const double height = rowHeight(cells, padding);
  if (y_ > area_.top && y_ + height > bottom() && height <= wholeUpTo()) begin();
  const double line = tallestLine(cells);
  const qsizetype lines = mostLines(cells);
  qsizetype from = 0;
  do {
    auto room = static_cast<qsizetype>((bottom() - y_ - 2 * padding) / line);
    if (room < 1) {
      begin();
      room = std::max<qsizetype>(1, static_cast<qsizetype>((bottom() - y_ - 2 * padding) / line));
    }
    const qsizetype to = std::min(lines, from + room);
    rowPart(cells, from, to, padding, rule && to == lines);
    from = to;
  } while (from < lines);
}

void PageFlow::rowPart(const std::vector<FlowCell>& cells, qsizetype from, qsizetype to, double padding, bool rule) {
  const double line = tallestLine(cells);
  const double top = y_;
  y_ += static_cast<double>(to - from) * line + 2 * padding;
  add([cells, from, to, padding, rule, line, top, end = y_, area = area_](QPainter& painter) {
    for (const auto& cell : cells) {
      painter.setFont(cell.font);
      const int side = cell.align == Align::Right ? Qt::AlignRight : Qt::AlignLeft;
      for (qsizetype i = from; i < std::min(to, cell.lines.size()); ++i) {
        const QRectF place(cell.left, top + padding + static_cast<double>(i - from) * line, cell.width, line);
        painter.drawText(place, side | Qt::AlignVCenter | Qt::TextSingleLine | Qt::TextDontClip, cell.lines[i]);
      }
    }
    if (!rule) return;
    const QPen pen = painter.pen();
    painter.setPen(QPen(ruleColour, 4));
    painter.drawLine(QPointF(area.left, end), QPointF(area.left + area.width, end));
    painter.setPen(pen);
  });
}

void PageFlow::drawPage(std::size_t page, QPainter& painter) const {
  for (const auto& draw : pages_[page]) draw(painter);
}

}  // namespace steadyturn
