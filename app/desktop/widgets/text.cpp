#include "text.h"

#include <cmath>

namespace steadyturn {

QString fromText(std::string_view text) {
  return QString::fromUtf8(text.data(), static_cast<qsizetype>(text.size()));
}

std::string toText(const QString& text) { return text.toStdString(); }

QString torqueText(StatedTorque torque, int significant) { return fromText(writeTorque(torque, significant)); }

QString percentText(double percent, int decimals) {
  const double half = 0.5 * std::pow(10.0, -decimals);
  const QString digits = QString::number(std::abs(percent), 'f', decimals);
  if (std::abs(percent) < half) return digits + QStringLiteral(" %");
  return (percent < 0 ? QStringLiteral("−") : QStringLiteral("+")) + digits + QStringLiteral(" %");
}

QString plusMinusText(double percent) { return QStringLiteral("±%1 %").arg(fromText(writeRounded(percent, 3))); }

QString probabilityText(double probability) {
  // A rounded 100.0 % or 0.0 % would claim a certainty that no wrench has.
  if (probability > 0.999) return QStringLiteral("> 99.9 %");
  if (probability < 0.001) return QStringLiteral("< 0.1 %");
  return QString::number(probability * 100, 'f', 1) + QStringLiteral(" %");
}

QString rangeText(const Tool& tool) {
  QString high = torqueText(tool.maximumTorque());
  if (rulesFor(tool.kind).fixedValue) return high;
  if (!tool.minimum) return QStringLiteral("… %1").arg(high);
  return QStringLiteral("%1 … %2").arg(fromText(writeRounded(*tool.minimum)), high);
}

QString dateText(std::optional<Date> date) { return date ? fromText(writeDate(*date)) : absentText(); }

QString phaseText(Phase phase) {
  return phase == Phase::AsFound ? QStringLiteral("as found") : QStringLiteral("as left");
}

QString absentText() { return QStringLiteral("–"); }

QDate toQDate(Date date) {
  const std::chrono::year_month_day day{date};
  return QDate(static_cast<int>(day.year()), static_cast<int>(static_cast<unsigned>(day.month())),
               static_cast<int>(static_cast<unsigned>(day.day())));
}

Date fromQDate(QDate date) {
  return Date{std::chrono::year{date.year()} / std::chrono::month{static_cast<unsigned>(date.month())} /
              std::chrono::day{static_cast<unsigned>(date.day())}};
}

std::string asNumberText(const QString& typed) {
  QString text = typed.trimmed();
  text.replace(QLatin1Char(','), QLatin1Char('.'));
  return toText(text);
}

}  // namespace steadyturn
