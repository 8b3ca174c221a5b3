// Where a tool is checked: the lowest marked value, about 60 % and 100 % of the maximum (ISO 6789-1:2017).
#pragma once

#include <optional>
#include <vector>

#include "tool_kind.h"

namespace steadyturn {

// Set-points in the maximum's unit, rising. Without a marked minimum the first is 20 % of the maximum (the
// 2003 edition, still common practice). A fixed tool has one: its value. Values fall on the graduation
// where `resolution` (> 0) is given.
std::vector<StatedTorque> proposeSetPoints(ToolKind kind, std::optional<StatedTorque> minimum, StatedTorque maximum,
                                           std::optional<StatedTorque> resolution);

}  // namespace steadyturn
