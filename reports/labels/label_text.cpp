#include "label_text.h"

#include <QFontMetricsF>
#include <algorithm>

#include "plain_font.h"
#include "text_lines.h"

namespace steadyturn {
namespace {

// Sizes in points on a label with so much height for its words; a taller one has them larger in proportion. Print
// below 5 points is not read at a bench (common practice).
constexpr double usualHeightPoints = 72;
constexpr double markPoints = 24, wordPoints = 8.5, leastPoints = 5;
constexpr double shrinkStep = 0.94;

QString text(const std::string& utf8) { return QString::fromStdString(utf8).simplified(); }
QString dateText(Date date) { return QString::fromStdString(writeDate(date)); }

QFont paperFont(double points, double point, bool bold) {
  QFont font = plainFont(std::max(1, static_cast<int>(points * point)), bold);
  font.setHintingPreference(QFont::PreferNoHinting);
  return font;
}

struct Words {
  QString mark, description, checked, due, state;
};

Words wordsOf(const ToolLabel& label, Date printed) {
  return {.mark = text(label.tool),
          .description = text(label.description),
          .checked = label.lastCheck ? QStringLiteral("Checked %1").arg(dateText(*label.lastCheck))
                                     : QStringLiteral("Never checked"),
          .due = label.dueDate ? QStringLiteral("Next due %1").arg(dateText(*label.dueDate))
                               : QStringLiteral("No due date"),
          .state = QStringLiteral("On %1: %2").arg(dateText(printed), text(label.state))};
}

double lineHeight(const QFont& font) { return QFontMetricsF(font).lineSpacing(); }
double heightOf(const SetLines& part) { return lineHeight(part.font) * static_cast<double>(part.lines.size()); }

// A mark is read across the bench, so it keeps to one line where shrinking alone gets it there at a size that still
// stands out; only then is it wrapped.
QFont markFont(const QString& mark, double scale, double width, double point) {
  const double least = std::max(leastPoints, 1.4 * wordPoints * scale);
  double points = std::max(leastPoints, markPoints * scale);
  while (points > least && widthOf(mark, paperFont(points, point, true)) > width) points *= shrinkStep;
  return paperFont(std::max(points, least), point, true);
}

LabelText setAt(const Words& words, double scale, double width, double point) {
  const double size = std::max(leastPoints, wordPoints * scale);
  const QFont plain = paperFont(size, point, false), bold = paperFont(size, point, true);
  LabelText set;
  const auto add = [&](const QString& line, const QFont& font) {
    if (!line.isEmpty()) set.parts.push_back({font, breakLines(line, font, width)});
  };
  add(words.mark, markFont(words.mark, scale, width, point));
  add(words.description, plain);
  add(words.checked, plain);
  add(words.due, bold);
  add(words.state, plain);
  return set;
}

// The description, the second part, keeps as many lines as there is room for; nothing when that is none.
std::optional<LabelText> shortenDescription(LabelText set, double width, double height) {
  auto& description = set.parts[1];
  const double others = set.height() - heightOf(description);
  const auto room = static_cast<qsizetype>((height - others) / lineHeight(description.font));
  if (room < 1) return {};
  if (room >= description.lines.size()) return set;
  const QString rest = description.lines.mid(room - 1).join(' ');
  description.lines = description.lines.mid(0, room - 1);
  description.lines << QFontMetricsF(description.font).elidedText(rest, Qt::ElideRight, width);
  return set;
}

}  // namespace

double LabelText::height() const {
  double sum = 0;
  for (const auto& part : parts) sum += heightOf(part);
  return sum;
}

void LabelText::draw(QPainter& painter, QRectF place) const {
  double y = place.top() + (place.height() - height()) / 2;
  for (const auto& part : parts) {
    painter.setFont(part.font);
    const double tall = lineHeight(part.font);
    for (const auto& line : part.lines) {
      painter.drawText(QRectF(place.left(), y, place.width(), tall),
                       Qt::AlignLeft | Qt::AlignVCenter | Qt::TextSingleLine | Qt::TextDontClip, line);
      y += tall;
    }
  }
}

std::optional<LabelText> setLabelText(const ToolLabel& label, Date printed, QSizeF size, double point) {
  auto words = wordsOf(label, printed);
  double scale = std::max(1.0, size.height() / point / usualHeightPoints);
  for (; wordPoints * scale > leastPoints; scale *= shrinkStep) {
    auto set = setAt(words, scale, size.width(), point);
    if (set.height() <= size.height()) return set;
  }
  // The words are at their smallest. A mark that still stands out is worth more than a description's tail; only where
  // not one line of it is left does the mark shrink, too.
  for (; markPoints * scale > leastPoints; scale *= shrinkStep) {
    auto set = setAt(words, scale, size.width(), point);
    if (set.height() <= size.height()) return set;
    if (words.description.isEmpty()) continue;
    if (auto shortened = shortenDescription(std::move(set), size.width(), size.height())) return shortened;
  }
  words.description.clear();
  auto smallest = setAt(words, leastPoints / markPoints, size.width(), point);
  if (smallest.height() <= size.height()) return smallest;
  return {};
}

}  // namespace steadyturn
