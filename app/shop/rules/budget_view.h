// A check's uncertainty budgets, each figure with where it came from.
#pragma once

#include "bench_record.h"
#include "shop_views.h"

namespace steadyturn {

struct BudgetBasis {
  const Tool* tool = nullptr;
  const Reference* reference = nullptr;             // null: none named
  const std::vector<BenchSetup>* setups = nullptr;  // of the tool's model, the newest first
};

// One view a set-point. `check` is what `result` was evaluated from.
std::vector<BudgetView> budgetViews(const Check& check, const CheckResult& result, const BudgetBasis& basis);

}  // namespace steadyturn
