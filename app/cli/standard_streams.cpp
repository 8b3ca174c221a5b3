#include "standard_streams.h"

#include <fcntl.h>
#include <unistd.h>

#include <array>
#include <cerrno>
#include <csignal>
#include <cstring>

namespace steadyturn {
namespace {

constexpr std::size_t inputLimit = std::size_t{64} << 20;

Result<void> writeAll(int descriptor, std::string_view text) {
  while (!text.empty()) {
    const ssize_t written = ::write(descriptor, text.data(), text.size());
    if (written < 0 && errno == EINTR) continue;
    if (written < 0) {
      return refuse({.kind = ProblemKind::CannotCreate,
                     .field = "standard output",
                     .found = std::strerror(errno),
                     .accepted = "an output with room that stays open"});
    }
    text.remove_prefix(static_cast<std::size_t>(written));
  }
  return {};
}

}  // namespace

void prepareStandardStreams() {
  std::signal(SIGPIPE, SIG_IGN);
  for (const int descriptor : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
    if (::fcntl(descriptor, F_GETFD) != -1) continue;
    // The wrong direction on purpose: reading a closed input or writing a closed output stays an error.
    const int filler = ::open("/dev/null", descriptor == STDIN_FILENO ? O_WRONLY : O_RDONLY);
    if (filler != -1 && filler != descriptor) ::close(filler);
  }
}

Result<std::string> readStandardInput() {
  std::string text;
  std::array<char, 65536> block{};
  for (;;) {
    const ssize_t got = ::read(STDIN_FILENO, block.data(), block.size());
    if (got < 0 && errno == EINTR) continue;
    if (got < 0) {
      return refuse({.kind = ProblemKind::FileMissing,
                     .field = "standard input",
                     .found = std::strerror(errno),
                     .accepted = "a document to read"});
    }
    if (got == 0) return text;
    text.append(block.data(), static_cast<std::size_t>(got));
    if (text.size() > inputLimit) {
      return refuse(
          {.field = "standard input", .found = "more than 64 MiB", .accepted = "one document of up to 64 MiB"});
    }
  }
}

Result<void> writeStandardOutput(std::string_view text) { return writeAll(STDOUT_FILENO, text); }

void writeMessage(std::string_view line) {
  // A message that can't be shown has nowhere else to go; the exit status still tells.
  (void)writeAll(STDERR_FILENO, "sturn: " + std::string(line) + '\n');
}

}  // namespace steadyturn
