// The tables of a certificate: results, readings, uncertainty budget, as found beside as left.
#pragma once

#include "certificate.h"

namespace steadyturn {

TableBlock resultsTable(const Check& check);
// Readings as they were typed, with the deviation of each.
TableBlock readingsTable(const Check& check, const CheckResult& recomputed);
TableBlock budgetTable(const CheckResult& recomputed);
// The two checks of one visit, set-point by set-point.
TableBlock beforeAndAfterTable(const Check& before, const Check& after);

}  // namespace steadyturn
