#include "progress_line.h"

#include <unistd.h>

#include <algorithm>
#include <csignal>
#include <cstdio>

namespace steadyturn {
namespace {

volatile std::sig_atomic_t asked = 0;

void askProgress(int) { asked = 1; }

constexpr int barWidth = 30;

}  // namespace

ProgressLine::ProgressLine(std::string what)
    : what_(std::move(what)), began_(std::chrono::steady_clock::now()), terminal_(::isatty(STDERR_FILENO) == 1) {
  asked = 0;
  std::signal(SIGINT, askProgress);
  std::signal(SIGTERM, askProgress);
}

ProgressLine::~ProgressLine() {
  std::signal(SIGINT, SIG_DFL);
  std::signal(SIGTERM, SIG_DFL);
  if (shown_) std::fputs("\r\x1b[K", stderr);
}

Progress ProgressLine::progress() {
  return [this](double fraction) { return report(fraction); };
}

bool ProgressLine::report(double fraction) {
  using namespace std::chrono_literals;
  if (asked != 0) return false;
  if (!terminal_ || std::chrono::steady_clock::now() - began_ < 1s) return true;
  const double share = std::clamp(fraction, 0.0, 1.0);
  const auto full = static_cast<std::size_t>(share * barWidth);
  const std::string bar = std::string(full, '#') + std::string(barWidth - full, '.');
  std::fprintf(stderr, "\r%s [%s] %3.0f %%", what_.c_str(), bar.c_str(), share * 100);
  shown_ = true;
  return true;
}

}  // namespace steadyturn
