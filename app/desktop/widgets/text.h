// How values read on screen. The core's texts are UTF-8; screens use a true minus sign and a dash for what is absent.
#pragma once

#include <QDate>
#include <QString>
#include <optional>
#include <string>
#include <string_view>

#include "records.h"

namespace steadyturn {

QString fromText(std::string_view text);
std::string toText(const QString& text);

QString torqueText(StatedTorque torque, int significant = 4);  // "27.12 N·m"
QString percentText(double percent, int decimals = 2);         // "+1.20 %", "−0.35 %"
QString plusMinusText(double percent);                         // "±4 %"
QString probabilityText(double probability);                   // "99.7 %", "> 99.9 %", "< 0.1 %"
QString rangeText(const Tool& tool);                           // "20 … 100 N·m", "25 N·m"
QString dateText(std::optional<Date> date);                    // "2026-03-14", "–"
QString phaseText(Phase phase);                                // "as found"
QString absentText();                                          // "–"

QDate toQDate(Date date);
Date fromQDate(QDate date);

// Decimal commas become points; spaces around the number go. Nothing else is touched.
std::string asNumberText(const QString& typed);

}  // namespace steadyturn
