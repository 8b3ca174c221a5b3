// Numbers drawn for the demo: the same on every machine, which the standard library's distributions do not promise.
#pragma once

#include <cmath>
#include <cstdint>
#include <numbers>
#include <random>

namespace steadyturn {

class DemoRandom {
 public:
  explicit DemoRandom(std::uint32_t seed) : engine_(seed) {}
  double uniform() { return (static_cast<double>(engine_()) + 0.5) / 4294967296.0; }
  int below(int count) { return static_cast<int>(uniform() * count); }
  // Box–Muller.
  double normal() {
    const double radius = std::sqrt(-2 * std::log(uniform()));
    return radius * std::cos(2 * std::numbers::pi * uniform());
  }

 private:
  std::mt19937 engine_;
};

}  // namespace steadyturn
