// Trouble of the database engine: gone, busy, full, damaged, newer than the program. Thrown by the store, caught once
// at the application layer's edge, where it becomes a Problem for a face to word.
#pragma once

#include <exception>
#include <string>

#include "problem.h"

namespace steadyturn {

class StoreError : public std::exception {
 public:
  explicit StoreError(Problem problem) : problem_(std::move(problem)) {}
  const Problem& problem() const { return problem_; }
  const char* what() const noexcept override { return problem_.accepted.c_str(); }

 private:
  Problem problem_;
};

}  // namespace steadyturn
