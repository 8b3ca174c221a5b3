// What the bench says in words about a check as it stands.
#pragma once

#include <QString>
#include <QStringList>

#include "bench_model.h"

namespace steadyturn {

// "Before the first reading: 5 pulls at 100 N·m, not counted. Then 5 readings at each set-point, every one within ±4
// %."
QString planWords(const Tool& tool, const CheckPlan& plan);
// "all 15 readings lie within ±4 %", "2 of 15 readings lie outside ±4 %".
QString verdictWords(const CheckResult& result, DecisionRule rule);
// What the check leaves open, and what is amiss with the reference.
QStringList noteWords(const BenchModel& model);
// "Check 131 is saved: TW-07 as found, pass. Next due 2026-09-12."
QString savedWords(const SavedCheck& saved);

}  // namespace steadyturn
