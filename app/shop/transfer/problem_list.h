// What is wrong with a file: the first 100 problems, and how many more there are.
#pragma once

#include <cstddef>

#include "problem.h"

namespace steadyturn {

class ProblemList {
 public:
  static constexpr std::size_t most = 100;

  void add(Problem problem);
  bool empty() const { return listed_.empty(); }
  // The listed ones, and where there are more, one problem at the end whose `found` counts them.
  Problems take();

 private:
  Problems listed_;
  std::size_t unlisted_ = 0;
};

}  // namespace steadyturn
