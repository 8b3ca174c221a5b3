// What a person can do wrong or meet, as data. Each face (command line, desktop) turns a Problem into
// words in one place; nothing in the core formats a message for a screen.
#pragma once

#include <cstddef>
#include <optional>
#include <string>
#include <tl/expected.hpp>
#include <utility>
#include <vector>

namespace steadyturn {

// What sort of trouble it is. A face maps it to an exit status or a place on the screen.
enum class ProblemKind {
  BadInput,      // what was typed or read is not acceptable
  NotFound,      // a tool, fastener, check … that the shop does not know
  Conflict,      // it is there already, or a rule of the shop forbids it now
  FileMissing,   // an input file is missing or can't be read
  Unavailable,   // the database can't be used: gone, busy, newer than the program, damaged
  CannotCreate,  // an output can't be written
  NotPermitted,  // this role, or nobody signed in, may not do it
  Cancelled      // a person stopped it; nothing was kept
};

// One thing that is wrong: which field, what was found there, what would be accepted.
struct Problem {
  ProblemKind kind = ProblemKind::BadInput;
  std::string field{};                // "points[1].readings.unit", "tool", "--date" …; empty when there is none
  std::string found{};                // as typed; may be empty
  std::string accepted{};             // what would be right, or what to do next
  std::optional<std::size_t> line{};  // of a file, counted from 1

  bool operator==(const Problem&) const = default;
};

// All problems of one input at once.
using Problems = std::vector<Problem>;

template <typename T>
using Result = tl::expected<T, Problems>;

// A failure of one problem, ready to return from a function whose type is Result.
inline tl::unexpected<Problems> refuse(Problem problem) {
  return tl::unexpected<Problems>(Problems{std::move(problem)});
}

}  // namespace steadyturn
