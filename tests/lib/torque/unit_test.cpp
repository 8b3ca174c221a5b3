#include "unit.h"

#include <gtest/gtest.h>

#include <cstdio>
#include <memory>
#include <set>
#include <string>

#include "reference_table.h"

namespace steadyturn {
namespace {

TEST(Unit, FactorsAreTheExactDefinitions) {
  const auto table = testing::ReferenceTable::load("torque_units.csv");
  ASSERT_EQ(table.rows(), allUnits.size());
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::optional<Unit> unit = parseUnit(table.text(row, "unit"));
    ASSERT_TRUE(unit) << table.text(row, "unit");
    EXPECT_EQ(newtonMetresPer(*unit), table.figure(row, "newton_metres").value) << table.text(row, "unit");
  }
}

// The same from the definitions themselves (NIST SP 811 (2008), App. B), multiplied here.
TEST(Unit, FactorsFollowFromInchPoundAndGravity) {
  const double pound = 0.45359237 * 9.80665;
  EXPECT_DOUBLE_EQ(newtonMetresPer(Unit::PoundForceFoot), pound * 12 * 0.0254);
  EXPECT_DOUBLE_EQ(newtonMetresPer(Unit::PoundForceInch), pound * 0.0254);
  EXPECT_DOUBLE_EQ(newtonMetresPer(Unit::OunceForceInch), pound / 16 * 0.0254);
  EXPECT_DOUBLE_EQ(newtonMetresPer(Unit::KilogramForceCentimetre), 9.80665 / 100);
}

std::string outputOf(const std::string& command) {
  const std::unique_ptr<std::FILE, int (*)(std::FILE*)> pipe(popen(command.c_str(), "r"), pclose);
  std::string output;
  char buffer[256];
  while (pipe && std::fgets(buffer, sizeof buffer, pipe.get()) != nullptr) output += buffer;
  return output;
}

// A second witness that shares nothing with us: GNU Units and its own table of definitions.
TEST(Unit, FactorsAgreeWithTheUnitsProgram) {
  const std::pair<Unit, const char*> expressions[]{
      {Unit::NewtonMetre, "N m"},
      {Unit::CentinewtonMetre, "cN m"},
      {Unit::KilogramForceMetre, "kgf m"},
      {Unit::KilogramForceCentimetre, "kgf cm"},
      {Unit::PoundForceFoot, "lbf ft"},
      {Unit::PoundForceInch, "lbf in"},
      {Unit::OunceForceInch, "oz force in"},
  };
  for (const auto& [from, fromText] : expressions) {
    for (const auto& [to, toText] : expressions) {
      const std::string answer =
          outputOf(std::string("units -t -o %.17g '") + fromText + "' '" + toText + "' 2>/dev/null");
      ASSERT_FALSE(answer.empty()) << "the program 'units' (Debian package units) is needed for this test";
      const double expected = std::stod(answer);
      EXPECT_NEAR(newtonMetresPer(from) / newtonMetresPer(to) / expected, 1, 1e-15) << fromText << " in " << toText;
    }
  }
}

TEST(Unit, EveryCodeReadsBackAsItsUnit) {
  std::set<std::string_view> codes;
  for (Unit unit : allUnits) {
    EXPECT_EQ(parseUnit(unitCode(unit)), unit);
    EXPECT_EQ(parseUnit(unitSign(unit)), unit);
    EXPECT_NE(acceptedUnits().find(unitCode(unit)), std::string_view::npos);
    codes.insert(unitCode(unit));
  }
  EXPECT_EQ(codes.size(), allUnits.size());
}

void expectAll(Unit unit, std::initializer_list<const char*> spellings) {
  for (const char* spelling : spellings) EXPECT_EQ(parseUnit(spelling), unit) << spelling;
}

// What people write on tools, data sheets and forms: common practice.
TEST(Unit, TakesWhatPeopleType) {
  expectAll(Unit::NewtonMetre, {"Nm", "N·m", "N⋅m", "N m", "N-m", "N*m", "N.m", "nm", "NM", " Nm ", "N\u00A0m", "N–m",
                                "newton metre", "Newton metres", "newton-meter", "newtonmeters", "NEWTON METRES"});
  expectAll(Unit::CentinewtonMetre, {"cNm", "cN.m", "cN·m", "cnm", "CNM", "centinewton metre", "Ncm", "N·cm"});
  expectAll(Unit::KilogramForceMetre,
            {"kgm", "kgf.m", "kgf·m", "kgf m", "mkg", "kg-m", "KGM", "kpm", "kp·m", "m.kgf", "kilogram-force metre"});
  expectAll(Unit::KilogramForceCentimetre, {"kgfcm", "kgf.cm", "kgf·cm", "kgcm", "kg-cm", "cm.kg", "KGF CM"});
  expectAll(Unit::PoundForceFoot, {"ft-lb", "ft lb", "lb.ft", "ft·lbf", "lbf.ft", "lbf·ft", "ft-lbs", "FT-LB", "ftlb",
                                   "ft. lbs.", "foot pounds", "pound-feet", "Pound foot", "foot-pound force"});
  expectAll(Unit::PoundForceInch, {"lb.in", "in lbf", "inch pounds", "in-lb", "inlb", "lbf.in", "LB-IN", "in. lbs.",
                                   "pound inches", "inch pound-force"});
  expectAll(Unit::OunceForceInch, {"oz in", "ozin", "ozf.in", "in-oz", "oz·in", "ounce inches", "OZ-IN"});
}

// A prefix of another size must not become the plain unit (SI Brochure, table of prefixes: m milli, M mega, k
// kilo, d deci); a joule is an energy, N/m a stiffness.
TEST(Unit, RefusesWhatIsNotOneOfTheseUnits) {
  for (const char* other :
       {"mN.m", "MN.m",  "mNm",   "MNm", "kN.m",    "kNm",      "dNm",    "daNm",  "µN·m", "J",
        "j",    "joule", "N",     "m",   "lb",      "ft",       "in",     "kg",    "N/m",  "ft/lb",
        "Nmm",  "N.mm",  "N.m.m", "Nm2", "N.m/deg", "lb.ft.in", "kgf.ft", "oz.ft", "g.cm", "furlong",
        "",     " ",     ".",     "·",   "12 Nm",   "Nm 12",    "m N",    "mN"}) {
    EXPECT_EQ(parseUnit(other), std::nullopt) << other;
  }
  EXPECT_EQ(parseUnit(std::string_view("N\0m", 3)), std::nullopt);
}

}  // namespace
}  // namespace steadyturn
