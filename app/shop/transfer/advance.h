// Tells how far a long action is, about every hundredth of the way, and remembers when a person stopped it.
#pragma once

#include <algorithm>

#include "shop.h"

namespace steadyturn {

class Advance {
 public:
  explicit Advance(const Progress& progress) : progress_(progress) {}

  // False once it was cancelled.
  bool to(double fraction) {
    if (!cancelled_ && progress_ && fraction >= next_) {
      cancelled_ = !progress_(fraction);
      next_ = std::min(fraction + step, 1.0);  // the end is always told
    }
    return !cancelled_;
  }
  bool cancelled() const { return cancelled_; }

 private:
  static constexpr double step = 0.01;
  const Progress& progress_;
  double next_ = 0;
  bool cancelled_ = false;
};

inline Problem cancelledByPerson() {
  return {.kind = ProblemKind::Cancelled, .field = {}, .found = "stopped", .accepted = "nothing was kept"};
}

}  // namespace steadyturn
