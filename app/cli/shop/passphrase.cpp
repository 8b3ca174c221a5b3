#include "passphrase.h"

#include <fcntl.h>
#include <termios.h>
#include <unistd.h>

#include <cstdlib>

namespace steadyturn {
namespace {

// The terminal itself, so that a redirected input or output does not get in the way. Echo comes back whatever
// happens.
class SilentTerminal {
 public:
  SilentTerminal() : file_(::open("/dev/tty", O_RDWR | O_CLOEXEC | O_NOCTTY)) {
    if (file_ < 0 || ::tcgetattr(file_, &before_) != 0) return;
    termios silent = before_;
    silent.c_lflag &= ~static_cast<tcflag_t>(ECHO);
    silent_ = ::tcsetattr(file_, TCSAFLUSH, &silent) == 0;
  }
  ~SilentTerminal() {
    if (silent_) ::tcsetattr(file_, TCSAFLUSH, &before_);
    if (file_ >= 0) ::close(file_);
  }
  SilentTerminal(const SilentTerminal&) = delete;
  SilentTerminal& operator=(const SilentTerminal&) = delete;

  bool isThere() const { return silent_; }
  void say(const std::string& text) const {
    for (std::size_t done = 0; done < text.size();) {
      const auto written = ::write(file_, text.data() + done, text.size() - done);
      if (written <= 0) return;
      done += static_cast<std::size_t>(written);
    }
  }
  std::string line() const {
    std::string typed;
    for (char c = 0; ::read(file_, &c, 1) == 1 && c != '\n';) typed += c;
    return typed;
  }

 private:
  int file_;
  termios before_{};
  bool silent_ = false;
};

auto noWay(const char* variable) {
  return refuse(
      {.field = "passphrase",
       .accepted = std::string("a passphrase typed at a terminal, or in ") + variable + " in the environment"});
}

Result<std::string> askPassphrase(const char* variable, const std::string& prompt, bool twice) {
  if (const char* given = std::getenv(variable)) return std::string(given);
  const SilentTerminal terminal;
  if (!terminal.isThere()) return noWay(variable);
  terminal.say(prompt + ": ");
  const auto typed = terminal.line();
  terminal.say("\n");
  if (!twice) return typed;
  terminal.say("Once more: ");
  const auto again = terminal.line();
  terminal.say("\n");
  if (typed != again) return refuse({.field = "passphrase", .accepted = "the same passphrase twice"});
  return typed;
}

}  // namespace

Result<std::string> askPassphrase(const char* variable, const std::string& prompt) {
  return askPassphrase(variable, prompt, false);
}

Result<std::string> askNewPassphrase(const char* variable, const std::string& prompt) {
  return askPassphrase(variable, prompt, true);
}

}  // namespace steadyturn
