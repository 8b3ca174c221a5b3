// What is typed about a new tool, and the tool it makes.
#pragma once

#include <QString>

#include "records.h"

namespace steadyturn {

struct ToolForm {
  QString id, description, maker, serial, drive;
  QString type, cls;
  QString minimum, maximum, resolution, intervalDays, limitPercent;
  Unit unit = Unit::NewtonMetre;

  // All that is wrong at once; an empty optional field is absent.
  Result<Tool> tool() const;
};

}  // namespace steadyturn
