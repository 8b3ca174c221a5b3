#include "problem_list.h"

#include <algorithm>

namespace steadyturn {

void ProblemList::add(Problem problem) {
  if (listed_.size() < most) {
    listed_.push_back(std::move(problem));
  } else {
    ++unlisted_;
  }
}

Problems ProblemList::take() {
  // Checks are judged after all rows were read; a person reads the file from its top.
  std::ranges::stable_sort(listed_, {}, [](const Problem& problem) { return problem.line.value_or(0); });
  if (unlisted_ > 0) {
    listed_.push_back({.field = "rows",
                       .found = std::to_string(unlisted_) + (unlisted_ == 1 ? " problem more" : " problems more"),
                       .accepted = "rows without a problem; the first " + std::to_string(most) + " are listed"});
  }
  return std::move(listed_);
}

}  // namespace steadyturn
