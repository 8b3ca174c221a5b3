// Values of the core as JSON: absent is null, never NaN or infinity.
#pragma once

#include <optional>

#include "date.h"
#include "drift.h"
#include "json_document.h"
#include "torque.h"

namespace steadyturn {

OrderedJson numberJson(double value);  // null where no finite number stands
OrderedJson numberJson(std::optional<double> value);
OrderedJson torqueJson(StatedTorque torque);  // {"value", "unit"}
OrderedJson torqueJson(const std::optional<StatedTorque>& torque);
OrderedJson dateJson(std::optional<Date> date);
OrderedJson intervalJson(const std::optional<Interval>& interval);  // [low, high]

}  // namespace steadyturn
