#include "tool_form.h"

#include <cmath>

#include "text.h"

namespace steadyturn {
namespace {

void keep(Problems& problems, const Problems& more) { problems.insert(problems.end(), more.begin(), more.end()); }

std::optional<double> optionalNumber(const QString& typed, const char* field, Problems& problems) {
  if (typed.trimmed().isEmpty()) return std::nullopt;
  const Result<double> number = parseTorqueNumber(asNumberText(typed), field);
  if (!number) return keep(problems, number.error()), std::nullopt;
  return *number;
}

}  // namespace

Result<Tool> ToolForm::tool() const {
  Problems problems;
  Tool made;
  made.id = toText(id.trimmed());
  made.description = toText(description.trimmed());
  made.maker = toText(maker.trimmed());
  made.serial = toText(serial.trimmed());
  made.unit = unit;
  made.drive = toText(drive.trimmed());
  const Result<ToolKind> kind = parseToolKind(toText(type), toText(cls));
  if (kind) {
    made.kind = *kind;
  } else {
    keep(problems, kind.error());
  }
  const Result<double> highest = parseTorqueNumber(asNumberText(maximum), "max");
  if (highest) {
    made.maximum = *highest;
  } else {
    keep(problems, highest.error());
  }
  made.minimum = optionalNumber(minimum, "min", problems);
  made.resolution = optionalNumber(resolution, "resolution", problems);
  made.limitPercent = optionalNumber(limitPercent, "limit_percent", problems);
  const std::optional<double> days = optionalNumber(intervalDays, "interval_days", problems);
  if (days && (*days < 1 || *days > 36525 || std::floor(*days) != *days)) {
    problems.push_back(
        {.field = "interval_days", .found = toText(intervalDays), .accepted = "a whole number of days"});
  } else if (days) {
    made.intervalDays = static_cast<int>(*days);
  }
  if (!problems.empty()) return tl::unexpected(problems);
  return made;
}

}  // namespace steadyturn
