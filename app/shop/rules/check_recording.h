// From a typed check to the record that is stored: parsing, the tool's and reference's facts, evaluation. One path
// for the Bench, `check record` and the import.
#pragma once

#include <optional>

#include "records.h"
#include "shop_views.h"

namespace steadyturn {

// What a check is evaluated against. The pointers must outlive the call; reference may be null (an old record).
struct CheckBasis {
  const Tool* tool = nullptr;
  const Reference* reference = nullptr;
  DecisionRule rule = DecisionRule::Simple;
  VariationSpans variation;
};

struct EvaluatedCheck {
  Check check;         // ready to store; id and correction left open
  CheckResult result;  // with the notes
};

// Parses and evaluates. Refuses: a number that is none, a target outside the tool's range (above its maximum, or
// below its lowest marked value, by more than 2 %: usually a wrong unit), no readings at all, a set-point twice.
// Problems name "target", "reading", "unit", "date" …
Result<EvaluatedCheck> evaluateTyped(const CheckDraft& draft, const CheckBasis& basis);

// The evaluator's input of a check as stored, for recomputing.
CheckInput inputOf(const Check& check, const Tool& tool);

}  // namespace steadyturn
