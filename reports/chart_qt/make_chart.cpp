#include "make_chart.h"

#include <QGraphicsLayout>
#include <QPen>
#include <QtCharts/QAreaSeries>
#include <QtCharts/QCategoryAxis>
#include <QtCharts/QLegendMarker>
#include <QtCharts/QLineSeries>
#include <QtCharts/QScatterSeries>
#include <set>

#include "axis_ticks.h"
#include "labels_item.h"
#include "marks_item.h"
#include "plain_font.h"
#include "thinning.h"
#include "title_item.h"

namespace steadyturn {
namespace {

Qt::PenStyle penStyle(Stroke stroke) {
  switch (stroke) {
    case Stroke::Dashed:
      return Qt::DashLine;
    case Stroke::Dotted:
      return Qt::DotLine;
    case Stroke::Solid:
      break;
  }
  return Qt::SolidLine;
}

QPen verticalPen(const ChartTheme& theme, Role role) {
  QPen pen(theme.colour(role), 1.4);
  pen.setStyle(role == Role::Adjustment ? Qt::DashLine : role == Role::Crossing ? Qt::DashDotLine : Qt::DotLine);
  return pen;
}

QScatterSeries::MarkerShape legendShape(Mark mark) {
  switch (mark) {
    case Mark::Triangle:
      return QScatterSeries::MarkerShapeTriangle;
    case Mark::Square:
      return QScatterSeries::MarkerShapeRectangle;
    case Mark::Diamond:
      return QScatterSeries::MarkerShapeRotatedRectangle;
    case Mark::Star:
      return QScatterSeries::MarkerShapeStar;
    case Mark::Circle:
      break;
  }
  return QScatterSeries::MarkerShapeCircle;
}

class ChartMaker {
 public:
  ChartMaker(std::shared_ptr<const ChartModel> model, const ChartTheme& theme, const ChartWindow& window)
      : model_(std::move(model)),
        theme_(theme),
        chart_(std::make_unique<QChart>()),
        across_(window.across),
        values_(window.values) {}

  std::unique_ptr<QChart> make() {
    dress();
    addAxes();
    addBands();
    addStraightLines();
    addLines();
    addMarks();
    addLegend();
    return std::move(chart_);
  }

 private:
  void dress() {
    chart_->setAnimationOptions(QChart::NoAnimation);
    chart_->setBackgroundBrush(theme_.background);
    chart_->setBackgroundPen(Qt::NoPen);
    chart_->setBackgroundRoundness(0);
    auto* title = new TitleItem(chart_.get(), model_, theme_, plainFont(15, true), plainFont(13));
    chart_->setMargins(QMargins(6, static_cast<int>(title->height()), 10, 4));
    whenLaidOut([title](const QRectF&) { title->layOut(); });
    chart_->layout()->setContentsMargins(0, 0, 0, 0);
  }

  QCategoryAxis* makeAxis(AxisRange range, const std::vector<Tick>& ticks, Qt::Alignment side) {
    auto* axis = new QCategoryAxis;
    axis->setLabelsPosition(QCategoryAxis::AxisLabelsPositionOnValue);
    axis->setStartValue(range.low - 2 * (range.high - range.low));
    for (const auto& tick : ticks) axis->append(QString::fromStdString(tick.label), tick.at);
    axis->setRange(range.low, range.high);
    axis->setLabelsFont(plainFont(12));
    axis->setLabelsBrush(theme_.text);
    axis->setGridLinePen(QPen(theme_.grid, 1));
    axis->setLinePen(QPen(theme_.quietText, 1));
    chart_->addAxis(axis, side);
    return axis;
  }

  void addAxes() {
    const bool calendar = model_->across.byCalendar();
    acrossAxis_ = makeAxis(across_, calendar ? dateTicks(across_, 9) : countTicks(across_, 9), Qt::AlignBottom);
    if (!calendar) {
      acrossAxis_->setTitleText(QString::fromStdString(model_->across.name()));
      acrossAxis_->setTitleFont(plainFont(12));
      acrossAxis_->setTitleBrush(theme_.quietText);
    }
    valueAxis_ =
        makeAxis(values_, model_->plainValues ? countTicks(values_, 8) : valueTicks(values_, 8), Qt::AlignLeft);
    valueAxis_->setTitleText(QString::fromStdString(model_->valueAxis));
    valueAxis_->setTitleFont(plainFont(12));
    valueAxis_->setTitleBrush(theme_.quietText);
  }

  void attach(QAbstractSeries* series) {
    chart_->addSeries(series);
    series->attachAxis(acrossAxis_);
    series->attachAxis(valueAxis_);
  }

  void addBands() {
    for (const auto& band : model_->bands) {
      auto* high = new QLineSeries(chart_.get());
      auto* low = new QLineSeries(chart_.get());
      for (const auto& edge : band.edges) {
        high->append(model_->across.place(edge.date), edge.high);
        low->append(model_->across.place(edge.date), edge.low);
      }
      auto* area = new QAreaSeries(high, low);
      area->setName(QString::fromStdString(band.name));
      area->setBrush(theme_.predictionFill);
      // The outline tells the band from the ground where a printer drops the light fill.
      area->setPen(QPen(theme_.predictionEdge, 1, penStyle(band.outline)));
      attach(area);
    }
  }

  void addStraight(QPointF from, QPointF to, const QPen& pen) {
    auto* series = new QLineSeries;
    series->append(from);
    series->append(to);
    series->setPen(pen);
    attach(series);
  }

  void addStraightLines() {
    for (const auto& line : model_->horizontals) {
      const bool firm = line.role == Role::Limit;
      QPen pen(theme_.colour(line.role), firm ? 1.8 : 1.2);
      pen.setStyle(penStyle(line.stroke));
      addStraight({across_.low, line.value}, {across_.high, line.value}, pen);
    }
    for (const auto& line : model_->verticals) {
      const double x = model_->across.place(line.date);
      addStraight({x, values_.low}, {x, values_.high}, verticalPen(theme_, line.role));
    }
  }

  void addLines() {
    for (const auto& line : model_->lines) {
      auto* series = new QLineSeries;
      series->setName(QString::fromStdString(line.name));
      series->setPen(QPen(theme_.colour(line.role), 2, penStyle(line.stroke)));
      attach(series);
      whenLaidOut([series, &line, model = model_, across = across_](const QRectF& plot) {
        QList<QPointF> drawn;
        for (const auto index : thin(line.points, model->across, across, static_cast<int>(plot.width()))) {
          drawn << QPointF(model->across.place(line.points[index].date), line.points[index].value);
        }
        series->replace(drawn);
      });
    }
  }

  void addMarks() {
    // One series without points places the items on the axes even where the model has no series.
    QAbstractSeries* placed = nullptr;
    for (const auto& series : model_->points) {
      auto* legendCarrier = new QScatterSeries;
      legendCarrier->setName(QString::fromStdString(series.name));
      legendCarrier->setMarkerShape(legendShape(series.mark));
      legendCarrier->setMarkerSize(10);
      legendCarrier->setColor(theme_.colour(series.role));
      legendCarrier->setBorderColor(theme_.background);
      attach(legendCarrier);
      placed = legendCarrier;
      auto* marks = new MarksItem(chart_.get(), model_, &series, placed, theme_.colour(series.role),
                                  theme_.background, across_);
      marks->setZValue(overSeries);
      whenLaidOut([marks](const QRectF&) { marks->layOut(); });
    }
    if (!placed) {
      placed = new QScatterSeries;
      attach(placed);
    }
    auto* labels = new LabelsItem(chart_.get(), model_, placed, theme_, plainFont(12));
    labels->setZValue(underMarks);
    whenLaidOut([labels](const QRectF&) { labels->layOut(); });
  }

  void addLegend() {
    chart_->legend()->setAlignment(Qt::AlignBottom);
    chart_->legend()->setFont(plainFont(12));
    chart_->legend()->setLabelColor(theme_.text);
    chart_->legend()->setMarkerShape(QLegend::MarkerShapeFromSeries);
    // Segments share a name: it stands once. Straight lines have none here: they carry theirs themselves.
    std::set<QString> named;
    for (auto* marker : chart_->legend()->markers()) {
      const bool first = !marker->series()->name().isEmpty() && named.insert(marker->series()->name()).second;
      marker->setVisible(first);
      if (marker->type() == QLegendMarker::LegendMarkerTypeArea) {
        marker->setShape(QLegend::MarkerShapeRectangle);
        marker->setBrush(theme_.predictionFill);
        marker->setPen(QPen(theme_.predictionEdge, 1));
      }
    }
  }

  template <typename LayOut>
  void whenLaidOut(LayOut layOut) {
    QObject::connect(chart_.get(), &QChart::plotAreaChanged, chart_.get(), layOut);
  }

  static constexpr double underMarks = 5;  // above every series: a name must never hide a check
  static constexpr double overSeries = 6;

  std::shared_ptr<const ChartModel> model_;
  const ChartTheme& theme_;
  std::unique_ptr<QChart> chart_;
  AxisRange across_, values_;
  QCategoryAxis* acrossAxis_ = nullptr;
  QCategoryAxis* valueAxis_ = nullptr;
};

}  // namespace

std::unique_ptr<QChart> makeChart(std::shared_ptr<const ChartModel> model, const ChartTheme& theme,
                                  const std::optional<ChartWindow>& window) {
  const ChartWindow shown = window ? *window : wholeWindow(*model);
  return ChartMaker(std::move(model), theme, shown).make();
}

ChartWindow wholeWindow(const ChartModel& model) { return {acrossRange(model), valueRange(model)}; }

}  // namespace steadyturn
