// PDF/A-1b on A4. Everything is set in tenths of a point (720 dots an inch), so that font sizes in pixels are the
// same on every device and the measuring and the drawing agree.
#include <QApplication>
#include <QBuffer>
#include <QPdfWriter>
#include <algorithm>

#include "chart_picture.h"
#include "column_widths.h"
#include "page_flow.h"
#include "pdf_outline.h"
#include "plain_font.h"
#include "qr_symbol.h"
#include "text_lines.h"
#include "whole_write.h"
#include "writers.h"

namespace steadyturn {
namespace {

constexpr int dotsPerInch = 720;
constexpr double pointsPerInch = 72;
constexpr double pagePoints = 842;  // A4's height, as the page's MediaBox says it
constexpr double point = 10;
constexpr double pageWidth = 5953, pageHeight = 8419;  // A4: 210 mm × 297 mm
constexpr double margin = 44 * point;
constexpr double headerHeight = 24 * point, footerHeight = 22 * point;
constexpr QSize chartPixels(760, 380);  // so few that its words are as large as the text beside it
const QColor ink(0x1e, 0x24, 0x2b), quietInk(0x4d, 0x56, 0x60), headGround(0xec, 0xef, 0xf3);

QFont paperFont(double points, bool bold = false) {
  QFont font = plainFont(static_cast<int>(points * point), bold);
  font.setHintingPreference(QFont::PreferNoHinting);
  return font;
}

QString text(const std::string& utf8) { return QString::fromStdString(utf8); }

class PdfLayout {
 public:
  explicit PdfLayout(const ReportDocument& report)
      : report_(report),
        flow_({margin, margin + headerHeight, pageWidth - 2 * margin,
               pageHeight - 2 * margin - headerHeight - footerHeight}) {
    setTitle();
    for (const auto& block : report.blocks) {
      flow_.space(7 * point);
      std::visit([this](const auto& one) { set(one); }, block);
    }
    setEndMark();
  }

  std::size_t pageCount() const { return flow_.pageCount(); }
  const std::vector<PdfBookmark>& bookmarks() const { return bookmarks_; }

  void draw(std::size_t page, QPainter& painter) const {
    painter.setPen(ink);
    drawMargins(page, painter);
    painter.setPen(ink);
    flow_.drawPage(page, painter);
  }

 private:
  FlowCell cellFor(const QString& words, const QFont& font, double left, double width,
                   Align align = Align::Left) const {
    return {.left = left, .width = width, .lines = breakLines(words, font, width), .align = align, .font = font};
  }
  FlowCell lineOf(const QString& words, const QFont& font) const {
    return cellFor(words, font, flow_.left(), flow_.width());
  }

  // The symbol stands in the corner beside the title; a module is a whole number of dots.
  void setCode() {
    const auto symbol = report_.code.empty() ? std::nullopt : QrSymbol::of(report_.code);
    if (!symbol) return;
    constexpr double module = 12;  // 0.42 mm, which any camera tells apart
    const double side = symbol->sideWithQuietZone() * module;
    const QPointF corner(flow_.left() + flow_.width() - side, flow_.y());
    flow_.block(0, [symbol = *symbol, corner](QPainter& painter, QRectF) { symbol.draw(painter, corner, module); });
  }

  void setTitle() {
    mark(report_.title);
    setCode();
    flow_.row({lineOf(text(report_.title), paperFont(17, true))}, 0, false);
    flow_.row({lineOf(QStringLiteral("Number %1").arg(text(report_.number)), paperFont(10.5))}, 1 * point, false);
    flow_.row({lineOf(QStringLiteral("Issued by %1 on %2").arg(text(report_.issuer), text(report_.issued)),
                      paperFont(10.5))},
              1 * point, false);
  }

  // A heading never stands alone at the foot of a page: `follows` is the height of what must come with it.
  void setHeading(const std::string& heading, double follows) {
    if (heading.empty()) return;
    const auto cell = lineOf(text(heading), paperFont(11.5, true));
    flow_.keepTogether(flow_.rowHeight({cell}, 2 * point) + follows);
    mark(heading);
    flow_.row({cell}, 2 * point, false);
  }

  // What begins here is found again among the bookmarks.
  void mark(const std::string& title) {
    bookmarks_.push_back({text(title), flow_.pageCount() - 1, flow_.y() / dotsPerInch * pointsPerInch});
  }

  // Short facts stand two in a row, so that a certificate stays on one sheet.
  void set(const FactsBlock& block) {
    const QFont font = paperFont(9);
    double names = 0;
    for (const auto& fact : block.facts) names = std::max(names, widthOf(text(fact.name), font));
    names = std::min(names + factGap, 0.4 * flow_.width());
    const double half = flow_.width() / 2;
    const auto isShort = [&](const Fact& fact) {
      return widthOf(text(fact.name), font) < names && widthOf(text(fact.value), font) < half - names - factGap &&
             fact.value.find('\n') == std::string::npos;
    };
    const auto cells = [&](const Fact& fact, double left, double width) {
      return std::vector{cellFor(text(fact.name), font, left, names - factGap / 2),
                         cellFor(text(fact.value), font, left + names, width - names)};
    };
    std::vector<std::vector<FlowCell>> rows;
    for (std::size_t i = 0; i < block.facts.size(); ++i) {
      const bool pair = i + 1 < block.facts.size() && isShort(block.facts[i]) && isShort(block.facts[i + 1]);
      rows.push_back(cells(block.facts[i], flow_.left(), flow_.width()));
      if (!pair) continue;
      ++i;
      for (auto& cell : cells(block.facts[i], flow_.left() + half, half)) rows.back().push_back(std::move(cell));
    }
    setHeading(block.heading, togetherHeight(rows, factPadding));
    for (const auto& row : rows) flow_.row(row, factPadding, true);
  }

  // What must follow a heading on its page: all rows where they are few, else enough not to look lost.
  double togetherHeight(const std::vector<std::vector<FlowCell>>& rows, double padding) const {
    double all = 0;
    for (const auto& row : rows) all += flow_.rowHeight(row, padding);
    return all <= flow_.wholeUpTo() ? all : 60 * point;
  }

  void set(const ParagraphBlock& block) {
    const std::vector<FlowCell> words{lineOf(text(block.text), paperFont(9))};
    setHeading(block.heading, togetherHeight({words}, 1 * point));
    flow_.row(words, 1 * point, false);
  }

  static constexpr double cellPadding = 4 * point, rowPadding = 1.6 * point, headPadding = 2 * point;
  static constexpr double factPadding = 1.4 * point, factGap = 14 * point;

  std::vector<double> widthsOf(const TableBlock& block, const QFont& head, const QFont& body) const {
    std::vector<ColumnNeed> needs;
    for (std::size_t i = 0; i < block.columns.size(); ++i) {
      const auto heading = text(block.columns[i].heading);
      ColumnNeed need{widestWord(heading, head), widthOf(heading, head)};
      for (const auto& row : block.rows) {
        need.least = std::max(need.least, widestWord(text(row[i]), body));
        need.natural = std::max(need.natural, widthOf(text(row[i]), body));
      }
      // A hair more than measured, so that a word that fits exactly is not broken.
      needs.push_back({need.least + 2 * cellPadding + 2, need.natural + 2 * cellPadding + 2});
    }
    return columnWidths(needs, flow_.width());
  }

  std::vector<FlowCell> tableRow(const std::vector<QString>& words, const std::vector<Column>& columns,
                                 const std::vector<double>& widths, const QFont& font) const {
    std::vector<FlowCell> cells;
    double left = flow_.left();
    for (std::size_t i = 0; i < words.size(); ++i) {
      cells.push_back(cellFor(words[i], font, left + cellPadding, widths[i] - 2 * cellPadding, columns[i].align));
      left += widths[i];
    }
    return cells;
  }

  void set(const TableBlock& block) {
    const QFont head = paperFont(8.5, true), body = paperFont(8.5);
    const auto widths = widthsOf(block, head, body);
    std::vector<QString> headings;
    for (const auto& column : block.columns) headings.push_back(text(column.heading));
    const auto header = tableRow(headings, block.columns, widths, head);
    const double headerTall = flow_.rowHeight(header, headPadding);
    const auto setHeader = [&] {
      const QRectF ground(flow_.left(), flow_.y(), flow_.width(), headerTall);
      flow_.block(0, [ground](QPainter& painter, QRectF) { painter.fillRect(ground, headGround); });
      flow_.row(header, headPadding, true);
    };
    std::vector<std::vector<FlowCell>> rows;
    for (const auto& row : block.rows) {
      std::vector<QString> words;
      for (const auto& one : row) words.push_back(text(one));
      rows.push_back(tableRow(words, block.columns, widths, body));
    }
    const double together = headerTall + togetherHeight(rows, rowPadding);
    setHeading(block.heading, together);
    flow_.keepTogether(together);
    setHeader();
    for (const auto& row : rows) flow_.row(row, rowPadding, true, setHeader);
  }

  void set(const ChartBlock& block) {
    const double height = flow_.width() * chartPixels.height() / chartPixels.width();
    flow_.keepTogether(height);
    mark(block.chart.title);
    flow_.block(height, [chart = &block.chart](QPainter& painter, QRectF place) {
      painter.save();
      paintChart(*chart, lightTheme(), chartPixels, painter, place);
      painter.restore();
    });
  }

  void set(const SignatureBlock& block) {
    const QFont font = paperFont(9);
    const double share = flow_.width() / static_cast<double>(std::max<std::size_t>(block.roles.size(), 1));
    flow_.block(36 * point, [roles = block.roles, font, share](QPainter& painter, QRectF place) {
      painter.setFont(font);
      for (std::size_t i = 0; i < roles.size(); ++i) {
        const double left = place.left() + share * static_cast<double>(i);
        const double line = place.bottom() - 16 * point;
        painter.setPen(QPen(ink, 6));
        painter.drawLine(QPointF(left, line), QPointF(left + share - 20 * point, line));
        painter.drawText(QRectF(left, line + 2 * point, share - 20 * point, 13 * point),
                         Qt::AlignLeft | Qt::TextDontClip,
                         text(roles[i]) + QStringLiteral(" (name, date, signature)"));
      }
    });
  }

  void set(const FinePrintBlock& block) {
    flow_.row({lineOf(text(block.text), paperFont(7))}, 0, false);
    QString pairs;
    for (std::size_t i = 0; i < block.lines.size(); ++i)
      pairs += text(block.lines[i]) + (i % 2 == 0 ? QStringLiteral("  ") : QStringLiteral("\n"));
    if (!pairs.isEmpty()) flow_.row({lineOf(pairs.trimmed(), paperFont(6.2))}, 0, false);
  }

  void setEndMark() {
    flow_.space(8 * point);
    flow_.row({lineOf(QStringLiteral("End of %1").arg(text(report_.number)), paperFont(9, true))}, 2 * point, false);
  }

  // A long title or number is shortened in the margins: they stand in full on the first page.
  void drawMargin(QPainter& painter, double top, const QString& left, const QString& right) const {
    const QFont font = paperFont(8);
    const QFontMetricsF metrics(font);
    const double rightWidth = std::min(metrics.horizontalAdvance(right), 0.5 * flow_.width());
    const QRectF place(margin, top, flow_.width(), 12 * point);
    painter.setFont(font);
    painter.setPen(quietInk);
    painter.drawText(place, Qt::AlignRight | Qt::TextDontClip,
                     metrics.elidedText(right, Qt::ElideMiddle, rightWidth + 1));
    painter.drawText(place, Qt::AlignLeft | Qt::TextDontClip,
                     metrics.elidedText(left, Qt::ElideRight, flow_.width() - rightWidth - 12 * point));
  }

  void drawMargins(std::size_t page, QPainter& painter) const {
    drawMargin(painter, margin, text(report_.title), text(report_.number));
    const double foot = pageHeight - margin - 12 * point;
    drawMargin(painter, foot, QStringLiteral("%1, %2").arg(text(report_.number), text(report_.issuer)),
               QStringLiteral("page %1 of %2").arg(page + 1).arg(pageCount()));
    painter.setPen(QPen(headGround.darker(115), 6));
    for (const double y : {margin + 15 * point, foot - 4 * point}) {
      painter.drawLine(QPointF(margin, y), QPointF(pageWidth - margin, y));
    }
  }

  const ReportDocument& report_;
  PageFlow flow_;
  std::vector<PdfBookmark> bookmarks_;
};

bool hasChart(const ReportDocument& report) {
  return std::any_of(report.blocks.begin(), report.blocks.end(),
                     [](const Block& block) { return std::holds_alternative<ChartBlock>(block); });
}

}  // namespace

Result<void> writePdf(const ReportDocument& report, QIODevice& out) {
  const bool ready = hasChart(report) ? qobject_cast<QApplication*>(qApp) != nullptr : qGuiApp != nullptr;
  if (!ready) {
    return refuse({.kind = ProblemKind::Unavailable,
                   .field = "pdf",
                   .found = "no fonts",
                   .accepted = "a program with a display platform"});
  }
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter pdf(&buffer);
  pdf.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
  pdf.setResolution(dotsPerInch);
  pdf.setPageLayout(QPageLayout(QPageSize(QPageSize::A4), QPageLayout::Portrait, QMarginsF()));
  pdf.setTitle(QStringLiteral("%1, %2").arg(text(report.title), text(report.number)));
  pdf.setCreator(QStringLiteral("Steadyturn"));
  const PdfLayout layout(report);
  QPainter painter(&pdf);
  for (std::size_t page = 0; page < layout.pageCount(); ++page) {
    if (page > 0) pdf.newPage();
    layout.draw(page, painter);
  }
  painter.end();
  return writeWhole(out, withOutline(bytes, layout.bookmarks(), pagePoints));
}

}  // namespace steadyturn
