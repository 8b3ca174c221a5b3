#include <algorithm>
#include <array>
#include <string>

#include "joint.h"

namespace steadyturn {

namespace {

// ISO 898-1, proof loads of coarse threads, N, as a fastener supplier reprints them (read to M27); above M27 from
// memory, and 0 where not known.
struct ProofLoads {
  double diameterMm;
  std::array<double, 5> newtons;  // in the order of PropertyClass
};
constexpr auto proofLoads = std::to_array<ProofLoads>({
    {3, {1130, 1410, 2920, 4180, 4880}},
    {4, {1980, 2460, 5100, 7290, 8520}},
    {5, {3200, 3980, 8230, 11800, 13800}},
    {6, {4520, 5630, 11600, 16700, 19500}},
    {8, {8240, 10200, 21200, 30400, 35500}},
    {10, {13000, 16200, 33700, 48100, 56300}},
    {12, {19000, 23600, 48900, 70000, 81800}},
    {14, {25900, 32200, 66700, 95500, 112000}},
    {16, {35300, 44000, 91000, 130000, 152000}},
    {18, {43200, 53800, 115000, 159000, 186000}},
    {20, {55100, 68600, 147000, 203000, 238000}},
    {22, {68200, 84800, 182000, 252000, 294000}},
    {24, {79400, 98800, 212000, 293000, 342000}},
    {27, {103000, 128000, 275000, 381000, 445000}},
    {30, {0, 0, 337000, 466000, 544000}},
    {33, {0, 0, 416000, 576000, 673000}},
    {36, {0, 0, 490000, 678000, 792000}},
    {39, {0, 0, 586000, 810000, 947000}},
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
  const double load = row->newtons[static_cast<std::size_t>(cls)];
  return load > 0 ? std::optional(load) : std::nullopt;
}

}  // namespace steadyturn
