// Units of torque: their codes, their exact factors, and the ways people type them.
#pragma once

#include <array>
#include <optional>
#include <string_view>

namespace steadyturn {

enum class Unit {
  NewtonMetre,
  CentinewtonMetre,
  KilogramForceMetre,
  KilogramForceCentimetre,
  PoundForceFoot,
  PoundForceInch,
  OunceForceInch
};

inline constexpr std::array allUnits{
    Unit::NewtonMetre,    Unit::CentinewtonMetre, Unit::KilogramForceMetre, Unit::KilogramForceCentimetre,
    Unit::PoundForceFoot, Unit::PoundForceInch,   Unit::OunceForceInch};

// The code that files and JSON carry: "N.m", "cN.m", "kgf.m", "kgf.cm", "lbf.ft", "lbf.in", "ozf.in".
std::string_view unitCode(Unit unit);

// The sign for screens and paper: "N·m", "lbf·ft" …
std::string_view unitSign(Unit unit);

// Newton metres in one of the unit. Exact by definition: inch 0.0254 m, avoirdupois pound
// 0.453 592 37 kg, standard gravity 9.806 65 m/s² (NIST SP 811 (2008), App. B; BIPM SI Brochure).
double newtonMetresPer(Unit unit);

// Reads a unit as people type it: the codes, "Nm", "N·m", "N m", "ft-lb", "ft lbf", "lb.in", "in lbf",
// "kgm", "ozin" … Case is free unless it would change the meaning. Nothing for what is not a torque unit.
std::optional<Unit> parseUnit(std::string_view typed);

// "N.m, cN.m, …": the codes in one line, for saying what is accepted.
std::string_view acceptedUnits();

}  // namespace steadyturn
