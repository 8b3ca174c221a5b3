#include "pin_prompt.h"

#include <termios.h>
#include <unistd.h>

#include <cstdlib>
#include <iostream>

#include "standard_streams.h"

namespace steadyturn {
namespace {

// What is typed is not shown while this lives.
class NoEcho {
 public:
  NoEcho() {
    if (::tcgetattr(STDIN_FILENO, &before_) != 0) return;
    termios silent = before_;
    silent.c_lflag &= ~static_cast<tcflag_t>(ECHO);
    changed_ = ::tcsetattr(STDIN_FILENO, TCSAFLUSH, &silent) == 0;
  }
  ~NoEcho() {
    if (changed_) ::tcsetattr(STDIN_FILENO, TCSAFLUSH, &before_);
  }
  NoEcho(const NoEcho&) = delete;
  NoEcho& operator=(const NoEcho&) = delete;

 private:
  termios before_{};
  bool changed_ = false;
};

bool onTerminal() { return ::isatty(STDIN_FILENO) == 1; }

std::optional<std::string> nextLine() {
  std::string line;
  if (!std::getline(std::cin, line)) return std::nullopt;
  if (!line.empty() && line.back() == '\r') line.pop_back();
  return line;
}

std::optional<std::string> typed(const std::string& question) {
  if (!onTerminal()) return nextLine();
  std::cerr << question << ": " << std::flush;
  const NoEcho hidden;
  auto line = nextLine();
  std::cerr << '\n';
  return line;
}

}  // namespace

std::optional<std::string> askPin(const std::string& question, const char* variable) {
  if (const char* given = std::getenv(variable)) return given;
  return typed(question);
}

std::optional<std::string> askNewPin(const std::string& question, const char* variable) {
  if (const char* given = std::getenv(variable)) return given;
  for (;;) {
    auto once = typed(question);
    if (!once || !onTerminal()) return once;
    const auto again = typed(question + ", once more");
    if (!again) return std::nullopt;
    if (*once == *again) return once;
    writeMessage("the two are not the same: try again");
  }
}

}  // namespace steadyturn
