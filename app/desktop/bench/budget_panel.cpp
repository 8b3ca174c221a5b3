#include "budget_panel.h"

#include <QHeaderView>
#include <QPainter>
#include <algorithm>

#include "table_look.h"

namespace steadyturn {
namespace {

constexpr int leastRows = 3;

// A figure, and before it its share as a bar.
class ShareDelegate : public LookDelegate {
 public:
  using LookDelegate::LookDelegate;
  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    LookDelegate::paint(painter, option, index);
    const QVariant share = index.data(BudgetTable::shareRole);
    if (!share.isValid()) return;
    const bool selected = option.state & QStyle::State_Selected;
    const QColor colour =
        selected ? option.palette.color(QPalette::HighlightedText) : toneColour(Tone::Info, option.palette);
    const QColor ground = option.palette.color(selected ? QPalette::Highlight : QPalette::Base);
    const int digits = option.fontMetrics.horizontalAdvance(QStringLiteral("00.00 %")) + 22;
    const QRectF room(option.rect.adjusted(6, 0, -digits, 0));
    const double height = std::min(8.0, room.height() / 2);
    const QRectF track(room.left(), room.center().y() - height / 2, room.width(), height);
    painter->fillRect(track, blend(colour, ground, 0.15));
    painter->fillRect(QRectF(track.topLeft(), QSizeF(track.width() * share.toDouble() / 100, height)),
                      blend(colour, ground, 0.85));
  }
};

}  // namespace

BudgetPanel::BudgetPanel(QWidget* parent) : QTableView(parent) {
  setModel(&table_);
  dressTable(*this, tr("Uncertainty budget: sources down, set-points across"));
  setItemDelegate(new ShareDelegate(this));
  verticalHeader()->setDefaultSectionSize(fontMetrics().height() + 4);
  setSizePolicy(QSizePolicy::Expanding, QSizePolicy::Expanding);
  hide();
}

void BudgetPanel::show(std::vector<BudgetView> views) {
  const int setPoints = static_cast<int>(views.size());
  setVisible(setPoints > 0);
  table_.show(std::move(views));
  if (setPoints == setPoints_) return;
  setPoints_ = setPoints;
  if (setPoints == 0) return;
  // The more set-points, the narrower: the bars give way, the figures never do.
  std::vector<int> widths{32};
  widths.insert(widths.end(), static_cast<std::size_t>(setPoints), std::clamp(54 / setPoints, 12, 18));
  widths.push_back(0);
  setColumns(*this, widths);
  setMaximumHeight(heightOf(table_.rowCount()));
  updateGeometry();
}

int BudgetPanel::heightOf(int rows) const {
  return horizontalHeader()->sizeHint().height() + rows * verticalHeader()->defaultSectionSize() + 2 * frameWidth();
}

// It takes what the readings leave, up to all of its lines; it can be scrolled, and they should not have to be.
QSize BudgetPanel::sizeHint() const { return {600, heightOf(leastRows)}; }
QSize BudgetPanel::minimumSizeHint() const { return {400, heightOf(leastRows)}; }

}  // namespace steadyturn
