// Text broken into lines that fit a width.
#pragma once

#include <QFont>
#include <QString>
#include <QStringList>

namespace steadyturn {

// At word ends where possible, inside a word that is wider than the line; line ends of the text are kept. At least
// one line.
QStringList breakLines(const QString& text, const QFont& font, double width);

double widestWord(const QString& text, const QFont& font);
double widthOf(const QString& text, const QFont& font);

}  // namespace steadyturn
