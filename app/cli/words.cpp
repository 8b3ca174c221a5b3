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
  const std::string found = problem.found.empty() ? "" : ' ' + quoted(problem.found);
  switch (problem.kind) {
    case ProblemKind::BadInput:
    case ProblemKind::NotFound:
    case ProblemKind::Conflict:
    case ProblemKind::FileMissing:
      return found.empty() ? "found nothing" : "found" + found;
    case ProblemKind::Unavailable:
      return "can't use" + (found.empty() ? " it" : found);
    case ProblemKind::CannotCreate:
      return "can't write" + (found.empty() ? " it" : found);
    case ProblemKind::NotPermitted:
      return "not permitted" + found;
    case ProblemKind::Cancelled:
      return "cancelled";
  }
  return {};
}

// What leads over to the text that says what would be right.
std::string leadTo(ProblemKind kind) {
  switch (kind) {
    case ProblemKind::BadInput:
    case ProblemKind::NotFound:
    case ProblemKind::Conflict:
    case ProblemKind::FileMissing:
      return "; accepted: ";
    case ProblemKind::Unavailable:
    case ProblemKind::CannotCreate:
      return "; needed: ";
    case ProblemKind::NotPermitted:
    case ProblemKind::Cancelled:
      return ": ";
  }
  return {};
}

}  // namespace

std::string words(const Problem& problem) {
  std::string line = place(problem);
  line += (line.empty() ? "" : ": ") + complaint(problem);
  if (!problem.accepted.empty()) line += leadTo(problem.kind) + displayText(problem.accepted);
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
