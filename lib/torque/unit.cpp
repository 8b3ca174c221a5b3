#include "unit.h"

#include <algorithm>
#include <cstddef>
#include <span>
#include <string>

namespace steadyturn {
namespace {

struct UnitFacts {
  Unit unit;
  std::string_view code;
  std::string_view sign;
  // Products of the definitions in unit.h, all digits of the exact decimal.
  double newtonMetres;
};

constexpr std::array<UnitFacts, allUnits.size()> facts{{
    {Unit::NewtonMetre, "N.m", "N·m", 1.0},
    {Unit::CentinewtonMetre, "cN.m", "cN·m", 0.01},
    {Unit::KilogramForceMetre, "kgf.m", "kgf·m", 9.80665},
    {Unit::KilogramForceCentimetre, "kgf.cm", "kgf·cm", 0.0980665},
    {Unit::PoundForceFoot, "lbf.ft", "lbf·ft", 1.3558179483314004},
    {Unit::PoundForceInch, "lbf.in", "lbf·in", 0.1129848290276167},
    {Unit::OunceForceInch, "ozf.in", "ozf·in", 0.00706155181422604375},
}};

const UnitFacts& factsOf(Unit unit) { return facts[static_cast<std::size_t>(unit)]; }

using Spellings = std::span<const std::string_view>;

// In lower case, with a dot for whatever separates two words.
constexpr std::string_view newton[]{"n", "newton", "newtons"};
constexpr std::string_view centinewton[]{"cn", "centinewton", "centinewtons"};
constexpr std::string_view kilogramForce[]{
    "kgf",           "kg",       "kp",       "kilogram", "kilograms", "kilogram.force", "kilograms.force",
    "kilogramforce", "kilopond", "kiloponds"};
constexpr std::string_view poundForce[]{"lbf",    "lb",          "lbs",          "lbfs",      "pound",
                                        "pounds", "pound.force", "pounds.force", "poundforce"};
constexpr std::string_view ounceForce[]{"ozf", "oz", "ounce", "ounces", "ounce.force", "ounces.force", "ounceforce"};
constexpr std::string_view metre[]{"m", "metre", "metres", "meter", "meters"};
constexpr std::string_view centimetre[]{"cm", "centimetre", "centimetres", "centimeter", "centimeters"};
constexpr std::string_view foot[]{"ft", "foot", "feet"};
constexpr std::string_view inch[]{"in", "inch", "inches"};

struct Product {
  Unit unit;
  Spellings force;
  Spellings length;
  bool lengthMayComeFirst;  // not for newtons: "mN" is a millinewton
};

constexpr Product products[]{
    {Unit::NewtonMetre, newton, metre, false},
    {Unit::CentinewtonMetre, centinewton, metre, false},
    {Unit::CentinewtonMetre, newton, centimetre, false},  // N·cm is the same size
    {Unit::KilogramForceMetre, kilogramForce, metre, true},
    {Unit::KilogramForceCentimetre, kilogramForce, centimetre, true},
    {Unit::PoundForceFoot, poundForce, foot, true},
    {Unit::PoundForceInch, poundForce, inch, true},
    {Unit::OunceForceInch, ounceForce, inch, true},
};

// Middle dots, bullet, multiplication sign, no-break spaces, hyphens, en dash and minus, as keyboards and
// text programs make them. The solidus is not here: N/m is a stiffness.
constexpr std::string_view separators[]{" ",      "\t",     ".",      "-",      "*",      "\u00B7",
                                        "\u22C5", "\u2219", "\u2022", "\u00D7", "\u00A0", "\u202F",
                                        "\u2010", "\u2011", "\u2013", "\u2212"};

std::size_t separatorLength(std::string_view text) {
  for (std::string_view separator : separators) {
    if (text.starts_with(separator)) return separator.size();
  }
  return 0;
}

// Lower case, every run of separators one dot, none at the ends. Case can be dropped because no unit here
// is another one's spelling in other case: "mN.m" and "MN.m" both become "mn.m", which nothing matches.
std::string normalised(std::string_view typed) {
  std::string words;
  bool between = false;
  while (!typed.empty()) {
    if (const std::size_t length = separatorLength(typed); length > 0) {
      between = true;
      typed.remove_prefix(length);
      continue;
    }
    if (between && !words.empty()) words += '.';
    between = false;
    const char letter = typed.front();
    words += letter >= 'A' && letter <= 'Z' ? static_cast<char>(letter - 'A' + 'a') : letter;
    typed.remove_prefix(1);
  }
  return words;
}

bool isJoined(std::string_view text, Spellings first, Spellings second) {
  return std::ranges::any_of(first, [&](std::string_view head) {
    if (!text.starts_with(head)) return false;
    std::string_view tail = text.substr(head.size());
    if (tail.starts_with('.')) tail.remove_prefix(1);
    return std::ranges::find(second, tail) != second.end();
  });
}

}  // namespace

std::string_view unitCode(Unit unit) { return factsOf(unit).code; }

std::string_view unitSign(Unit unit) { return factsOf(unit).sign; }

double newtonMetresPer(Unit unit) { return factsOf(unit).newtonMetres; }

std::optional<Unit> parseUnit(std::string_view typed) {
  const std::string text = normalised(typed);
  for (const Product& product : products) {
    if (isJoined(text, product.force, product.length) ||
        (product.lengthMayComeFirst && isJoined(text, product.length, product.force))) {
      return product.unit;
    }
  }
  return std::nullopt;
}

std::string_view acceptedUnits() {
  static const std::string codes = [] {
    std::string line;
    for (const UnitFacts& unit : facts) {
      if (!line.empty()) line += ", ";
      line += unit.code;
    }
    return line;
  }();
  return codes;
}

}  // namespace steadyturn
