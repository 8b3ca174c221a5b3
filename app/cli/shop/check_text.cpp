#include "check_text.h"

#include "display_text.h"
#include "figures.h"
#include "text_table.h"

namespace steadyturn {
namespace {

std::string joinedCheck(const std::vector<std::string>& readings) {
  std::string text;
  for (const std::string& one : readings) text += (text.empty() ? "" : " ") + one;
  return text;
}

std::string correctionOf(const Check& check) {
  if (!check.corrects) return {};
  return "of check " + std::to_string(*check.corrects) + ": " + check.correctionReason;
}

}  // namespace

std::string checkText(const Check& check) {
  std::string text =
      factLines({{"check", std::to_string(check.id)},
                 {"tool", check.tool},
                 {"date", writeDate(check.date) + (check.phase == Phase::AsFound ? ", as found" : ", as left")},
                 {"reference", check.reference},
                 {"by", check.by},
                 {"direction", std::string(writeDirection(check.direction))},
                 {"temperature", check.temperatureC ? figure(check.temperatureC) + " °C" : ""},
                 {"humidity", check.humidityPercent ? figure(check.humidityPercent) + " %" : ""},
                 {"note", check.note},
                 {"verdict", std::string(writeVerdict(check.verdict)) + " (limit ± " + figure(check.limitPercent) +
                                 " %, " + std::string(writeRule(check.rule)) + " decision rule)"},
                 {"correction", correctionOf(check)},
                 {"corrected by", check.correctedBy ? "check " + std::to_string(*check.correctedBy) : ""}});
  TextTable table({{"target", Side::Right},
                   {"mean deviation, %", Side::Right},
                   {"U (k = 2), %", Side::Right},
                   {"interval W', %", Side::Right},
                   {"probability within, %", Side::Right},
                   {"verdict"},
                   {"readings"}});
  for (const CheckPoint& point : check.points) {
    table.row({torqueText(point.target), signedFigure(point.meanDeviation), figure(2 * point.standardUncertainty),
               figure(point.interval), percentFigure(point.conformityProbability),
               std::string(writeVerdict(point.verdict)), joinedCheck(point.readings)});
  }
  return text + '\n' + table.text();
}

}  // namespace steadyturn
