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
// "The chance that this pass is wrong is about 1 in 40: …"
QString riskWords(const CheckResult& result);
// What speaks against beginning: the tool is held, the reference is doubtful. To be read before the first reading.
QStringList doubtWords(const BenchModel& model);
// "7 readings, typed earlier for W06, 2026-11-20"
QString waitingWords(const WaitingDraft& draft);
// What the check leaves open.
QStringList noteWords(const BenchModel& model);
// "Check 131 is saved: TW-07 as found, pass. Next due 2026-09-12."
QString savedWords(const SavedCheck& saved);

}  // namespace steadyturn
