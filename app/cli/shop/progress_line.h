// How far a long command is, on standard error when that is a terminal and the work takes longer than a second;
// Ctrl-C cancels it.
#pragma once

#include <chrono>
#include <string>

#include "shop.h"

namespace steadyturn {

class ProgressLine {
 public:
  // While this lives, SIGINT and SIGTERM ask for the end instead of ending the program. One at a time.
  explicit ProgressLine(std::string what);
  ~ProgressLine();
  ProgressLine(const ProgressLine&) = delete;
  ProgressLine& operator=(const ProgressLine&) = delete;

  // For Shop's long functions; this must outlive it.
  Progress progress();

 private:
  bool report(double fraction);

  std::string what_;
  std::chrono::steady_clock::time_point began_;
  bool terminal_;
  bool shown_ = false;
};

}  // namespace steadyturn
