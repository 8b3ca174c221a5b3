#include "figures.h"

namespace steadyturn {

static const std::string absent = "-";

std::string figure(std::optional<double> value, int significant) {
  return value ? writeRounded(*value, significant) : absent;
}

std::string signedFigure(std::optional<double> value, int significant) {
  if (!value) return absent;
  const std::string text = writeRounded(*value, significant);
  return *value > 0 ? '+' + text : text;
}

std::string intervalFigure(const std::optional<Interval>& interval) {
  if (!interval) return absent;
  return signedFigure(interval->low) + " to " + signedFigure(interval->high);
}

std::string dateFigure(std::optional<Date> date) { return date ? writeDate(*date) : absent; }

std::string percentFigure(std::optional<double> probability) {
  if (!probability) return absent;
  const double percent = *probability * 100;
  if (percent > 99.99) return ">99.99";
  if (percent < 0.01) return "<0.01";
  return writeRounded(percent, percent >= 99 ? 4 : 3);
}

}  // namespace steadyturn
