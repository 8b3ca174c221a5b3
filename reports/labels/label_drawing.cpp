#include "label_drawing.h"

#include <algorithm>
#include <cmath>

#include "label_code.h"

namespace steadyturn {
namespace {

constexpr double paddingMm = 2;  // printers and cutters stray (common practice)
// Modules that are read from a hand's length by a telephone and by a cheap scanner alike (common practice). A large
// label, which hangs farther away, may have larger ones.
constexpr double usualModuleMm = 0.7, leastModuleMm = 0.25;
constexpr double largestShare = 0.8;  // of the height, for the code

QRectF inside(QRectF place) {
  const double padding = paddingMm * labelDotsPerMm;
  return place.adjusted(padding, padding, -padding, -padding);
}

auto tooLong(const ToolLabel& label) {
  return refuse({.field = "tool", .found = label.tool, .accepted = "a larger label, or a shorter mark and state"});
}

}  // namespace

Result<FittedLabel> fitLabel(const ToolLabel& label, Date printed, QSizeF size) {
  if (label.tool.empty()) return refuse({.field = "tool", .accepted = "the tool's mark"});
  const auto symbol = QrSymbol::of(writeLabelCode({.kind = LabelKind::Tool, .id = label.tool}));
  if (!symbol) return tooLong(label);
  const QRectF inner = inside(QRectF(QPointF(), size));
  const double modules = symbol->sideWithQuietZone();
  const double room = std::min(inner.height(), inner.width() / 2) / modules;
  const double wanted = std::max(usualModuleMm * labelDotsPerMm, largestShare * inner.height() / modules);
  const double module = std::floor(std::min(room, wanted));
  if (module < leastModuleMm * labelDotsPerMm) return tooLong(label);
  const double side = module * symbol->sideWithQuietZone();
  auto text = setLabelText(label, printed, {inner.width() - side, inner.height()}, labelDotsPerPoint);
  if (!text) return tooLong(label);
  return FittedLabel{.symbol = *symbol, .module = module, .text = std::move(*text)};
}

void FittedLabel::draw(QPainter& painter, QRectF place) const {
  const QRectF inner = inside(place);
  const double side = module * symbol.sideWithQuietZone();
  // On whole dots, as the modules are.
  const QPointF corner(std::floor(inner.right() - side), std::floor(inner.top() + (inner.height() - side) / 2));
  symbol.draw(painter, corner, module);
  painter.setPen(Qt::black);
  text.draw(painter, QRectF(inner.left(), inner.top(), inner.width() - side, inner.height()));
}

}  // namespace steadyturn
