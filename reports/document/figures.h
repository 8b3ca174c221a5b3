// Figures as tables of reports and of the command line show them: plain ASCII, so that a spreadsheet reads them as
// numbers; what is absent is "-".
#pragma once

#include <optional>
#include <string>

#include "date.h"
#include "drift.h"
#include "torque.h"

namespace steadyturn {

std::string figure(std::optional<double> value, int significant = 3);
std::string signedFigure(std::optional<double> value, int significant = 3);  // "+1.2", "-0.4"
std::string intervalFigure(const std::optional<Interval>& interval);         // "-1.2 to +3.4"
std::string dateFigure(std::optional<Date> date);
// A probability in %, never rounded up to certainty: "98.7", ">99.99", "<0.01".
std::string percentFigure(std::optional<double> probability);

}  // namespace steadyturn
