#include "small_charts.h"

#include <QAbstractListModel>
#include <QPainter>
#include <QStyledItemDelegate>

#include "badge.h"
#include "history_words.h"
#include "table_look.h"
#include "text.h"

namespace steadyturn {

class SmallCharts::Stories : public QAbstractListModel {
 public:
  using QAbstractListModel::QAbstractListModel;
  void show(std::vector<SmallStory> stories) {
    beginResetModel();
    stories_ = std::move(stories);
    std::vector<const HistoryData*> histories;
    for (const auto& story : stories_) histories.push_back(&story.history);
    scale_ = commonScale(histories);
    endResetModel();
  }
  const std::vector<SmallStory>& stories() const { return stories_; }
  const SmallStory& at(const QModelIndex& index) const { return stories_[static_cast<std::size_t>(index.row())]; }
  const SmallScale& scale() const { return scale_; }

  int rowCount(const QModelIndex& parent = {}) const override {
    return parent.isValid() ? 0 : static_cast<int>(stories_.size());
  }
  // What a screen reader says and what typing looks for.
  QVariant data(const QModelIndex& index, int role) const override {
    if (role != Qt::DisplayRole && role != Qt::ToolTipRole && role != Qt::AccessibleTextRole) return {};
    const SmallStory& story = at(index);
    const QString standing = story.look ? QStringLiteral(", ") + story.look->word : QString();
    return QString(story.title + standing + QStringLiteral(": ") + fromText(driftSentence(story.history)));
  }

 private:
  std::vector<SmallStory> stories_;
  SmallScale scale_;
};

namespace {

constexpr int cellWidth = 274, chartHeight = 92, margin = 8;

template <typename Stories>
class SmallChartDelegate : public QStyledItemDelegate {
 public:
  SmallChartDelegate(const Stories& stories, QObject* parent) : QStyledItemDelegate(parent), stories_(stories) {}

  QSize sizeHint(const QStyleOptionViewItem& option, const QModelIndex&) const override {
    return {cellWidth, chartHeight + 2 * option.fontMetrics.height() + 3 * margin};
  }

  void paint(QPainter* painter, const QStyleOptionViewItem& option, const QModelIndex& index) const override {
    const SmallStory& story = stories_.at(index);
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    QRect place = option.rect.adjusted(2, 2, -2, -2);
    if (selected) painter->fillRect(place, option.palette.highlight());
    place.adjust(margin, margin / 2, -margin, -margin / 2);
    const QColor words = option.palette.color(selected ? QPalette::HighlightedText : QPalette::WindowText);
    const int line = option.fontMetrics.height();
    painter->save();
    painter->setFont(option.font);
    drawHead(painter, option, story, QRect(place.left(), place.top(), place.width(), line), words);
    const QRect chart(place.left(), place.top() + line + 3, place.width(), chartHeight);
    paintSmallChart(*painter, chart, story.history, stories_.scale(),
                    isDark(option.palette) ? darkTheme() : lightTheme());
    painter->setPen(words);
    const QRect foot(place.left(), chart.bottom() + 3, place.width(), line);
    painter->drawText(
        foot, Qt::AlignLeft | Qt::AlignVCenter,
        option.fontMetrics.elidedText(fromText(shortDriftSentence(story.history)), Qt::ElideRight, foot.width()));
    painter->restore();
  }

 private:
  static void drawHead(QPainter* painter, const QStyleOptionViewItem& option, const SmallStory& story,
                       const QRect& place, const QColor& words) {
    QFont bold = option.font;
    bold.setBold(true);
    painter->setFont(bold);
    painter->setPen(words);
    constexpr int sign = 28;  // room for a standing's sign before its word
    const int standing = story.look ? option.fontMetrics.horizontalAdvance(story.look->word) + sign + margin : 0;
    const int name = place.width() - standing;
    painter->drawText(place.adjusted(0, 0, name - place.width(), 0), Qt::AlignLeft | Qt::AlignVCenter,
                      QFontMetrics(bold).elidedText(story.title, Qt::ElideRight, name));
    painter->setFont(option.font);
    if (!story.look) return;
    const bool selected = option.state.testFlag(QStyle::State_Selected);
    paintLook(*painter, place.adjusted(name + margin, 0, 0, 0), *story.look,
              selected ? words : toneColour(story.look->tone, option.palette));
  }

  const Stories& stories_;
};

}  // namespace

SmallCharts::SmallCharts(QWidget* parent) : QListView(parent), model_(new Stories(this)) {
  setModel(model_);
  setItemDelegate(new SmallChartDelegate<Stories>(*model_, this));
  setViewMode(QListView::IconMode);
  setMovement(QListView::Static);
  setResizeMode(QListView::Adjust);
  setUniformItemSizes(true);
  setSpacing(2);
  setFrameShape(QFrame::NoFrame);
  setVerticalScrollMode(QAbstractItemView::ScrollPerPixel);
  setHorizontalScrollBarPolicy(Qt::ScrollBarAlwaysOff);
  setEditTriggers(QAbstractItemView::NoEditTriggers);
  setAccessibleName(tr("Histories side by side, worst first"));
  connect(this, &QListView::activated, this, [this](const QModelIndex& index) { emit opened(index.row()); });
}

SmallCharts::~SmallCharts() = default;

void SmallCharts::show(std::vector<SmallStory> stories) {
  model_->show(std::move(stories));
  if (model_->rowCount() > 0) setCurrentIndex(model_->index(0));
}

const std::vector<SmallStory>& SmallCharts::stories() const { return model_->stories(); }

}  // namespace steadyturn
