#include "words.h"

#include "display_text.h"
#include "exit_status.h"

namespace steadyturn {
namespace {

constexpr std::size_t longestQuote = 80;  // columns; a line of 200 MB is not repeated on the terminal

std::string place(const Problem& problem) {
  std::string place;
  if (problem.line) place = "line " + std::to_string(*problem.line);
  if (!problem.field.empty()) place += (place.empty() ? "" : ", ") + displayText(problem.field);
  return place;
}

std::string quoted(const std::string& found) { return '"' + clipped(displayText(found), longestQuote) + '"'; }

// What is wrong with what was found, in the words that suit the kind of trouble.
std::string complaint(const Problem& problem) {
  const bool says = !problem.found.empty();
  switch (problem.kind) {
    case ProblemKind::BadInput:
      return says ? "found " + quoted(problem.found) : "found nothing";
    case ProblemKind::NotFound:
      return says ? "there is no " + quoted(problem.found) : "not found";
    case ProblemKind::FileMissing:
      return says ? "can't read " + quoted(problem.found) : "can't be read";
    case ProblemKind::CannotCreate:
      return says ? "can't write " + quoted(problem.found) : "can't be written";
    case ProblemKind::Cancelled:
      return "cancelled";
    case ProblemKind::Conflict:
    case ProblemKind::Unavailable:
    case ProblemKind::NotPermitted:
      return says ? quoted(problem.found) : std::string();
  }
  return {};
}

}  // namespace

std::string words(const Problem& problem) {
  std::string line = place(problem);
  const auto add = [&line](const std::string& part, const char* joint) {
    if (part.empty()) return;
    line += (line.empty() ? "" : joint) + part;
  };
  add(complaint(problem), ": ");
  if (problem.accepted.empty()) return line;
  if (problem.kind == ProblemKind::BadInput) {
    add("accepted: " + displayText(problem.accepted), "; ");
  } else {
    add(displayText(problem.accepted), ": ");
  }
  return line;
}

int exitStatusFor(const Problems& problems) {
  switch (problems.front().kind) {
    case ProblemKind::BadInput:
    case ProblemKind::NotFound:
    case ProblemKind::Conflict:
      return exit_status::badInput;
    case ProblemKind::FileMissing:
      return exit_status::inputMissing;
    case ProblemKind::Unavailable:
      return exit_status::unavailable;
    case ProblemKind::CannotCreate:
      return exit_status::cannotCreate;
    case ProblemKind::NotPermitted:
      return exit_status::notPermitted;
    case ProblemKind::Cancelled:
      return exit_status::cancelled;
  }
  return exit_status::badInput;
}

}  // namespace steadyturn
