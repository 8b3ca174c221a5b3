#include "source_words.h"

#include <QCoreApplication>

#include "history_words.h"
#include "text.h"

namespace steadyturn {
namespace {

QString tr(const char* text) { return QCoreApplication::translate("History", text); }

// Where the dashed line comes from.
QString borrowedFrom(const HistoryForecast& forecast) {
  if (!forecast.fleet.estimated) return QStringLiteral(". ") + fromText(forecast.fleet.assumption);
  return tr(". Dashed: mixed model of %1.").arg(fromText(forecast.fleet.group));
}

}  // namespace

QString sourceWords(const HistoryData& data) {
  const QString limit = data.tool.limitPercent ? tr("the tool's own limit")
                                               : tr("ISO 6789-1:2017, type %1 class %2")
                                                     .arg(fromText(writeType(data.tool.kind.type)),
                                                          fromText(writeClass(data.tool.kind.cls)));
  QString words =
      tr("Limit %1: %2. Uncertainty: ISO 6789-2:2017. Drift: least squares, one slope, an intercept for "
         "each stretch between adjustments; band: %3 % prediction interval for the mean of one more check "
         "(Student t).")
          .arg(plusMinusText(data.limitPercent), limit, fromText(writeRounded(data.confidence * 100, 3)));
  if (isBorrowed(data)) words += QLatin1Char(' ') + fromText(basisSentence(data)) + borrowedFrom(*data.forecast);
  return words;
}

}  // namespace steadyturn
