// Torque as a quantity (held in N·m), and torque as somebody stated it (a value in a unit).
#pragma once

#include <compare>
#include <string>
#include <string_view>

#include "problem.h"
#include "unit.h"

namespace steadyturn {

// A torque. It can't be made without saying the unit, nor read without asking for one.
class Torque {
 public:
  constexpr Torque() = default;
  static Torque of(double value, Unit unit);
  double in(Unit unit) const;
  constexpr double newtonMetres() const { return newtonMetres_; }
  auto operator<=>(const Torque&) const = default;

 private:
  double newtonMetres_ = 0;
};

// A torque as stated: the number and the unit stay together, so that what is compared with a limit is
// compared in the limit's own unit and 20 lbf.ft does not become 20.000000000000004.
struct StatedTorque {
  double value = 0;
  Unit unit = Unit::NewtonMetre;

  Torque torque() const { return Torque::of(value, unit); }
  // The same torque in another unit; in its own unit the value is returned untouched.
  double in(Unit other) const { return other == unit ? value : torque().in(other); }
  bool operator==(const StatedTorque&) const = default;
};

// The same torque stated in another unit.
StatedTorque convert(StatedTorque torque, Unit to);

// Reads a decimal number as people type it: optional sign, digits, one '.' (or ',' where decimalComma),
// optional exponent. Refuses stray letters ("1O.5"), NaN, infinity, hexadecimal and empty text.
// `field` names the number in the problem.
Result<double> parseNumber(std::string_view typed, std::string_view field, bool decimalComma = false);

// The same, and refuses a negative value: no torque here is negative.
Result<double> parseTorqueNumber(std::string_view typed, std::string_view field, bool decimalComma = false);

// The shortest decimal text that reads back as the same double, without an exponent where it stays short
// ("0.1", "27.116", "1e-09").
std::string writeNumber(double value);

// For people: rounded to `significant` digits, trailing zeros dropped, never an exponent between 1e-4 and 1e9.
std::string writeRounded(double value, int significant = 4);

// "27.12 N·m": rounded, with the unit's sign.
std::string writeTorque(StatedTorque torque, int significant = 4);

}  // namespace steadyturn
