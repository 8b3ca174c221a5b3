#include "title_item.h"

#include <QFontMetricsF>
#include <QPainter>

namespace steadyturn {
namespace {

constexpr double inset = 10;

}  // namespace

TitleItem::TitleItem(QChart* chart, std::shared_ptr<const ChartModel> model, const ChartTheme& theme,
                     const QFont& title, const QFont& sentence)
    : QGraphicsItem(chart),
      chart_(chart),
      model_(std::move(model)),
      text_(theme.text),
      quietText_(theme.quietText),
      title_(title),
      sentence_(sentence) {
  setAcceptedMouseButtons(Qt::NoButton);
  const std::string basis = model_->basis.empty() ? "" : ". " + model_->basis;
  setToolTip(QString::fromStdString(model_->title + ": " + model_->subtitle + basis));
}

double TitleItem::height() const {
  const int sentences = model_->basis.empty() ? 1 : 2;
  return QFontMetricsF(title_).height() + sentences * QFontMetricsF(sentence_).height() + inset;
}

void TitleItem::layOut() { prepareGeometryChange(); }

QRectF TitleItem::boundingRect() const { return {inset, 0, chart_->size().width() - 2 * inset, height()}; }

void TitleItem::paint(QPainter* painter, const QStyleOptionGraphicsItem*, QWidget*) {
  QRectF place = boundingRect().adjusted(0, inset / 2, 0, 0);
  const auto draw = [&](const QFont& font, const QColor& colour, const std::string& words) {
    const QFontMetricsF metrics(font);
    painter->setFont(font);
    painter->setPen(colour);
    painter->drawText(place, Qt::AlignLeft | Qt::AlignTop | Qt::TextSingleLine | Qt::TextDontClip,
                      metrics.elidedText(QString::fromStdString(words), Qt::ElideRight, place.width()));
    place.setTop(place.top() + metrics.height());
  };
  draw(title_, text_, model_->title);
  draw(sentence_, quietText_, model_->subtitle);
  if (!model_->basis.empty()) draw(sentence_, quietText_, model_->basis);
}

}  // namespace steadyturn
