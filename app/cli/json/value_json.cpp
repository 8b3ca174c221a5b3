#include "value_json.h"

#include <cmath>

namespace steadyturn {

OrderedJson numberJson(double value) {
  if (!std::isfinite(value)) return nullptr;
  return value;
}

OrderedJson numberJson(std::optional<double> value) {
  if (!value) return nullptr;
  return numberJson(*value);
}

OrderedJson torqueJson(StatedTorque torque) {
  return {{"value", numberJson(torque.value)}, {"unit", unitCode(torque.unit)}};
}

OrderedJson torqueJson(const std::optional<StatedTorque>& torque) {
  if (!torque) return nullptr;
  return torqueJson(*torque);
}

OrderedJson dateJson(std::optional<Date> date) {
  if (!date) return nullptr;
  return writeDate(*date);
}

OrderedJson intervalJson(const std::optional<Interval>& interval) {
  if (!interval) return nullptr;
  return OrderedJson::array({numberJson(interval->low), numberJson(interval->high)});
}

}  // namespace steadyturn
