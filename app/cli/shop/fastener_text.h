// A fastener's specification as a person reads it on a terminal.
#pragma once

#include <string>

#include "records.h"

namespace steadyturn {

inline constexpr const char* serviceDataFirst = "The vehicle maker's service data come first.";

// Every fact that is on record, torques in two units, and where the numbers come from.
std::string fastenerText(const Fastener& fastener);

// "27.12 N.m (20 lbf.ft)": in its own unit and in the other system's.
std::string torqueInTwoUnits(StatedTorque torque);

}  // namespace steadyturn
