// The stored facts of a check, evaluated again: for the uncertainty budget, which is not stored, and to see that the
// stored figures follow from the stored readings.
#pragma once

#include "certificate.h"

namespace steadyturn {

// Problems when a stored reading can't be read or the check can't be evaluated.
Result<CheckResult> recompute(const Tool& tool, const Check& check);

// Whether every stored figure agrees with `result` within a millionth of a percent.
bool agrees(const Check& check, const CheckResult& result);

}  // namespace steadyturn
