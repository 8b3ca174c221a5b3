#include <algorithm>
#include <array>
#include <string>

#include "joint.h"

namespace steadyturn {

namespace {

// ISO 898-1:2013, table 5 (proof loads, coarse threads), N; from memory. Classes 4.6 and 5.6 are left out: their
// columns were not at hand.
struct ProofLoads {
  double diameterMm;
  double c8_8, c10_9, c12_9;
};
constexpr auto proofLoads = std::to_array<ProofLoads>({
    {3, 2920, 4180, 4880},
    {4, 5100, 7290, 8520},
    {5, 8230, 11800, 13800},
    {6, 11600, 16700, 19500},
    {8, 21200, 30400, 35500},
    {10, 33700, 48100, 56300},
    {12, 48900, 70000, 81800},
    {14, 66700, 95500, 112000},
    {16, 91000, 130000, 152000},
    {18, 115000, 159000, 186000},
    {20, 147000, 203000, 238000},
    {22, 182000, 252000, 294000},
    {24, 212000, 293000, 342000},
    {27, 275000, 381000, 445000},
    {30, 337000, 466000, 544000},
    {33, 416000, 576000, 673000},
    {36, 490000, 678000, 792000},
    {39, 586000, 810000, 947000},
});

// VDI 2230 Part 1, R_p0.2 min (for 4.6 and 5.6 R_eL), MPa.
struct Strength {
  PropertyClass cls;
  std::string_view name;
  double toM16;
  double aboveM16;
};
constexpr auto strengths = std::to_array<Strength>({
    {PropertyClass::C4_6, "4.6", 240, 240},
    {PropertyClass::C5_6, "5.6", 300, 300},
    {PropertyClass::C8_8, "8.8", 640, 660},
    {PropertyClass::C10_9, "10.9", 940, 940},
    {PropertyClass::C12_9, "12.9", 1100, 1100},
});

const Strength& strengthOf(PropertyClass cls) { return *std::ranges::find(strengths, cls, &Strength::cls); }

}  // namespace

Result<PropertyClass> parsePropertyClass(std::string_view typed, std::string_view field) {
  const auto found = std::ranges::find(strengths, typed, &Strength::name);
  if (found != strengths.end()) return found->cls;
  return refuse(
      {.field = std::string(field), .found = std::string(typed), .accepted = "4.6, 5.6, 8.8, 10.9 or 12.9"});
}

std::string_view writePropertyClass(PropertyClass cls) { return strengthOf(cls).name; }

double proofStrengthMPa(PropertyClass cls, double diameterMm) {
  return diameterMm > 16 ? strengthOf(cls).aboveM16 : strengthOf(cls).toM16;
}

std::optional<double> tabulatedProofLoadN(const Thread& thread, PropertyClass cls) {
  const auto row = std::ranges::find(proofLoads, thread.diameterMm, &ProofLoads::diameterMm);
  if (!thread.coarse || row == proofLoads.end()) return std::nullopt;
  switch (cls) {
    case PropertyClass::C8_8:
      return row->c8_8;
    case PropertyClass::C10_9:
      return row->c10_9;
    case PropertyClass::C12_9:
      return row->c12_9;
    case PropertyClass::C4_6:
    case PropertyClass::C5_6:
      return std::nullopt;
  }
  return std::nullopt;
}

}  // namespace steadyturn
