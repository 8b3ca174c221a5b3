// Text on its way to a terminal: harmless, and as wide as it looks.
#pragma once

#include <cstddef>
#include <string>
#include <string_view>

#include "torque.h"

namespace steadyturn {

// The text on one line, with control characters (an escape sequence hidden in a description, a line break) and bytes
// that are not UTF-8 shown as U+FFFD.
std::string displayText(std::string_view text);

// Columns it takes on a terminal: combining marks none, East Asian wide characters two (Unicode UAX #11, the usual
// ranges).
std::size_t displayWidth(std::string_view text);

// At most so many columns, with an ellipsis at the end when something was left out.
std::string clipped(std::string_view text, std::size_t columns);

// "27.12 N.m": rounded, with the unit's code, so that what is printed can be typed back.
std::string torqueText(StatedTorque torque, int significant = 4);

}  // namespace steadyturn
