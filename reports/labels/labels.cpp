#include "labels.h"

#include <fmt/format.h>

#include <QBuffer>
#include <QGuiApplication>
#include <QPainter>
#include <QPdfWriter>
#include <vector>

#include "label_drawing.h"
#include "whole_write.h"

namespace steadyturn {
namespace {

Result<std::vector<FittedLabel>> fitAll(std::span<const ToolLabel> labels, const LabelPlace& place, Date printed) {
  const QSizeF size(place.width * labelDotsPerMm, place.height * labelDotsPerMm);
  std::vector<FittedLabel> fitted;
  Problems problems;
  for (std::size_t i = 0; i < labels.size(); ++i) {
    auto one = fitLabel(labels[i], printed, size);
    if (one) {
      fitted.push_back(std::move(*one));
      continue;
    }
    for (auto& problem : one.error()) {
      problem.field = fmt::format("labels[{}].{}", i, problem.field);
      problems.push_back(std::move(problem));
    }
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return fitted;
}

void setUp(QPdfWriter& pdf, const LabelSheet& sheet, Date printed) {
  pdf.setPdfVersion(QPagedPaintDevice::PdfVersion_A1b);
  pdf.setResolution(labelDotsPerInch);
  const QPageSize size(QSizeF(sheet.pageWidth, sheet.pageHeight), QPageSize::Millimeter, {}, QPageSize::ExactMatch);
  pdf.setPageLayout(QPageLayout(size, QPageLayout::Portrait, QMarginsF()));
  pdf.setTitle(QStringLiteral("Tool labels, %1").arg(QString::fromStdString(writeDate(printed))));
  pdf.setCreator(QStringLiteral("Steadyturn"));
}

QRectF dots(const LabelPlace& place) {
  return {place.left * labelDotsPerMm, place.top * labelDotsPerMm, place.width * labelDotsPerMm,
          place.height * labelDotsPerMm};
}

void drawPages(QPdfWriter& pdf, const std::vector<FittedLabel>& labels, const LabelSheet& sheet) {
  QPainter painter(&pdf);
  int place = sheet.skip;
  for (const auto& label : labels) {
    if (place == sheet.places()) {
      pdf.newPage();
      place = 0;
    }
    const QRectF box = dots(sheet.place(place++));
    if (sheet.cutLines) {
      painter.setPen(QPen(QColor(0xb0, 0xb6, 0xbd), 3));
      painter.setBrush(Qt::NoBrush);
      painter.drawRect(box);
    }
    label.draw(painter, box);
  }
}

}  // namespace

Result<void> writeLabels(std::span<const ToolLabel> labels, const LabelSheet& sheet, Date printed, QIODevice& out) {
  if (!qGuiApp) {
    return refuse({.kind = ProblemKind::Unavailable,
                   .field = "pdf",
                   .found = "no fonts",
                   .accepted = "a program with a display platform"});
  }
  auto checked = checkSheet(sheet);
  auto problems = checked ? Problems{} : std::move(checked.error());
  if (labels.empty()) problems.push_back({.field = "labels", .found = "none", .accepted = "at least one tool"});
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  const auto fitted = fitAll(labels, sheet.place(0), printed);
  if (!fitted) return tl::unexpected(fitted.error());
  QByteArray bytes;
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::WriteOnly);
  QPdfWriter pdf(&buffer);
  setUp(pdf, sheet, printed);
  drawPages(pdf, *fitted, sheet);
  return writeWhole(out, bytes);
}

}  // namespace steadyturn
