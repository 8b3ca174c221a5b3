#include "chart_picture.h"

#include <gmock/gmock.h>

#include <QBuffer>
#include <QImage>
#include <QRegularExpression>
#include <QXmlStreamReader>

#include "demo_reports.h"
#include "foresight_charts.h"
#include "make_chart.h"

namespace steadyturn {
namespace {

QByteArray svgOf(const ChartModel& chart, QSize size = {1100, 600}) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  EXPECT_TRUE(writeChartSvg(chart, lightTheme(), size, buffer));
  return buffer.data();
}

QImage pngOf(const ChartModel& chart, const ChartTheme& theme) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  EXPECT_TRUE(writeChartPng(chart, theme, {1100, 600}, buffer));
  return QImage::fromData(buffer.data(), "PNG");
}

// How many pixels have this colour, or nearly: edges are smoothed.
int pixelsOf(const QImage& image, const QColor& colour) {
  int count = 0;
  for (int y = 0; y < image.height(); ++y) {
    for (int x = 0; x < image.width(); ++x) {
      const QColor here = image.pixelColor(x, y);
      count += std::abs(here.red() - colour.red()) + std::abs(here.green() - colour.green()) +
                   std::abs(here.blue() - colour.blue()) <
               40;
    }
  }
  return count;
}

// One after the other: a sign that another font draws is a text of its own.
QString textsOf(const QByteArray& svg) {
  QString texts;
  QXmlStreamReader reader(svg);
  while (!reader.atEnd()) {
    if (reader.readNext() == QXmlStreamReader::StartElement && reader.name() == u"text") {
      texts += reader.readElementText(QXmlStreamReader::IncludeChildElements).remove('\n');
    }
  }
  EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
  return texts;
}

TEST(ChartSvg, NamesEveryLineSeriesAndAxis) {
  const auto texts = textsOf(svgOf(historyChart(test::demoHistory())));
  for (const char* needed : {"TW-07 at 60 N·m", "limit +4 %", "limit −4 %", "adjusted 2023-02-14", "as of 2026-06-01",
                             "by now could be outside ±4 %", "as found", "as left", "fitted drift", "95 % prediction",
                             "mean deviation ± W, %", "2021", "+4", "−4"}) {
    EXPECT_TRUE(texts.contains(QString::fromUtf8(needed))) << needed;
  }
}

TEST(ChartSvg, WritesSharesAndCountsWithoutSignsFromNoughtOn) {
  const WhatIf whatIf{.scope = "W08",
                      .intervalNow = 365,
                      .target = 0.95,
                      .keepsTarget = 412,
                      .risks = {{.intervalDays = 30, .risk = 0, .worstRisk = 0, .checksPerYear = 12.2},
                                {.intervalDays = 730, .risk = 0.09, .worstRisk = 0.09, .checksPerYear = 0.5}}};
  const auto chart = riskChart(whatIf);
  EXPECT_DOUBLE_EQ(wholeWindow(chart).values.low, 0);
  const auto texts = textsOf(svgOf(chart, {560, 300}));
  for (const char* needed : {"checking interval, days", "outside at its end, %", "keeps 95 %: 412 days",
                             "now: 365 days", "target: at most 5 %", "600"}) {
    EXPECT_TRUE(texts.contains(QString::fromUtf8(needed))) << needed;
  }
  EXPECT_FALSE(texts.contains(QStringLiteral("+")));
}

TEST(ChartSvg, HasNothingTranslucent) {
  // PDF/A-1b forbids transparency; the same chart goes into PDF.
  const auto svg = QString::fromUtf8(svgOf(historyChart(test::demoHistory())));
  static const QRegularExpression opacity(QStringLiteral("opacity=\"([^\"]*)\""));
  auto found = opacity.globalMatch(svg);
  ASSERT_TRUE(found.hasNext());
  while (found.hasNext()) EXPECT_EQ(found.next().captured(1), QStringLiteral("1"));
}

TEST(ChartPng, IsOfTheSizeAskedForAndDrawsEveryRoleInItsColour) {
  for (const auto* theme : {&lightTheme(), &darkTheme()}) {
    const auto image = pngOf(historyChart(test::demoHistory()), *theme);
    EXPECT_EQ(image.size(), QSize(1100, 600));
    EXPECT_GT(pixelsOf(image, theme->background), 1100 * 600 / 3);
    EXPECT_GT(pixelsOf(image, theme->predictionFill), 10'000);
    EXPECT_GT(pixelsOf(image, theme->asFound), 13 * 20);  // 13 circles
    EXPECT_GT(pixelsOf(image, theme->asLeft), 15);        // one triangle
    EXPECT_GT(pixelsOf(image, theme->limit), 1000);       // two lines across the plot
  }
}

TEST(ChartPng, ThemesAreReadable) {
  // WCAG 2.1, 1.4.3 and 1.4.11: contrast 4.5:1 for text, 3:1 for shapes that carry meaning.
  const auto luminance = [](const QColor& colour) {
    const auto linear = [](double c) { return c <= 0.03928 ? c / 12.92 : std::pow((c + 0.055) / 1.055, 2.4); };
    return 0.2126 * linear(colour.redF()) + 0.7152 * linear(colour.greenF()) + 0.0722 * linear(colour.blueF());
  };
  const auto contrast = [&](const QColor& a, const QColor& b) {
    const auto [low, high] = std::minmax({luminance(a), luminance(b)});
    return (high + 0.05) / (low + 0.05);
  };
  for (const auto* theme : {&lightTheme(), &darkTheme()}) {
    for (const auto& text : {theme->text, theme->quietText, theme->limit, theme->adjustment, theme->today}) {
      EXPECT_GE(contrast(text, theme->background), 4.5) << text.name().toStdString();
    }
    for (const auto& shape : {theme->asFound, theme->asLeft, theme->fit, theme->predictionEdge}) {
      EXPECT_GE(contrast(shape, theme->background), 3.0) << shape.name().toStdString();
    }
  }
}

TEST(Chart, DrawsWithoutPointsAndInATinySpace) {
  EXPECT_FALSE(svgOf(ChartModel{}).isEmpty());
  EXPECT_FALSE(svgOf(historyChart(test::demoHistory()), {60, 40}).isEmpty());
}

TEST(Chart, KeepsTheHighestOfAHundredThousandPoints) {
  auto chart = historyChart(test::demoHistory());
  auto& points = chart.points[0].points;
  const auto day = points[0].date;
  points.assign(100'000, ChartPoint{.date = day, .value = 0, .uncertainty = std::nullopt, .note = {}});
  for (int i = 0; i < 100'000; ++i) points[static_cast<std::size_t>(i)].date = day + std::chrono::days{i / 50};
  const auto flat = pngOf(chart, lightTheme());
  points[54'321].value = 3;
  const auto spiked = pngOf(chart, lightTheme());
  // A flat crowd and a spike differ only near the spike's height, by about one circle.
  int changed = 0;
  for (int y = 0; y < flat.height(); ++y) {
    for (int x = 0; x < flat.width(); ++x) changed += flat.pixel(x, y) != spiked.pixel(x, y);
  }
  EXPECT_GT(changed, 40);
  EXPECT_LT(changed, 400);
}

}  // namespace
}  // namespace steadyturn
