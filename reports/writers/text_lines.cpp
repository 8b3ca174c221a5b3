#include "text_lines.h"

#include <QFontMetricsF>
#include <QRegularExpression>
#include <QTextLayout>
#include <QTextOption>
#include <algorithm>

namespace steadyturn {
namespace {

// A number keeps its % and its unit ("N·m") and an equation its sides: broken there, all are misread (SI Brochure,
// 9th edition, 5.4.3, for the unit). As long as the text itself, so that lines found in it are lines of the text.
QString keptTogether(QString text) {
  static const QRegularExpression bond(QStringLiteral(" (?=[=×<>±])|(?<=[=×<>±|+]) |(?<=[0-9]) (?=%|[A-Za-z]+·)"));
  return text.replace(bond, QString(QChar::Nbsp));
}

}  // namespace

QStringList breakLines(const QString& text, const QFont& font, double width) {
  QStringList lines;
  for (const auto& paragraph : text.split('\n')) {
    QTextLayout layout(keptTogether(paragraph), font);
    QTextOption option;
    option.setWrapMode(QTextOption::WrapAtWordBoundaryOrAnywhere);
    layout.setTextOption(option);
    layout.beginLayout();
    for (auto line = layout.createLine(); line.isValid(); line = layout.createLine()) {
      line.setLineWidth(width);
      lines << paragraph.mid(line.textStart(), line.textLength()).trimmed();
    }
    layout.endLayout();
  }
  return lines.isEmpty() ? QStringList{QString()} : lines;
}

double widestWord(const QString& text, const QFont& font) {
  static const QRegularExpression space(QStringLiteral("[ \n]+"));
  double widest = 0;
  for (const auto& word : keptTogether(text).split(space)) widest = std::max(widest, widthOf(word, font));
  return widest;
}

double widthOf(const QString& text, const QFont& font) { return QFontMetricsF(font).horizontalAdvance(text); }

}  // namespace steadyturn
