#include "torque.h"

#include <fmt/core.h>

namespace steadyturn {

Torque Torque::of(double value, Unit unit) {
  Torque torque;
  torque.newtonMetres_ = value * newtonMetresPer(unit);
  return torque;
}

double Torque::in(Unit unit) const { return newtonMetres_ / newtonMetresPer(unit); }

StatedTorque convert(StatedTorque torque, Unit to) { return {.value = torque.in(to), .unit = to}; }

std::string writeTorque(StatedTorque torque, int significant) {
  return fmt::format("{} {}", writeRounded(torque.value, significant), unitSign(torque.unit));
}

}  // namespace steadyturn
