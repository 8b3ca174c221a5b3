#include "tool_kind.h"

#include <gtest/gtest.h>

#include <set>

#include "reference_table.h"

namespace steadyturn {
namespace {

TEST(ToolKind, KeepsTheStandardsTable) {
  const auto table = testing::ReferenceTable::load("permissible_deviation.csv");
  ASSERT_EQ(table.rows(), 12u);
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const Result<ToolKind> kind = parseToolKind(table.text(row, "type"), table.text(row, "class"));
    ASSERT_TRUE(kind) << row;
    const std::string name = table.text(row, "type") + " " + table.text(row, "class");
    const double small = table.figure(row, "to_10_Nm").value;
    const double large = table.figure(row, "above_10_Nm").value;
    EXPECT_EQ(permissibleDeviationPercent(*kind, {10, Unit::NewtonMetre}), small) << name;
    EXPECT_EQ(permissibleDeviationPercent(*kind, {10.001, Unit::NewtonMetre}), large) << name;
    EXPECT_EQ(permissibleDeviationPercent(*kind, {1, Unit::NewtonMetre}), small) << name;
    EXPECT_EQ(permissibleDeviationPercent(*kind, {1000, Unit::NewtonMetre}), large) << name;
    EXPECT_EQ(rulesFor(*kind).readings, table.figure(row, "readings").value) << name;
    EXPECT_EQ(rulesFor(*kind).exercisePulls, table.figure(row, "uncounted").value) << name;
    EXPECT_FALSE(rulesFor(*kind).source.empty()) << name;
  }
}

TEST(ToolKind, TheBorderIsTenNewtonMetresInAnyUnit) {
  const ToolKind wrench{ToolType::Setting, ToolClass::A};
  EXPECT_EQ(permissibleDeviationPercent(wrench, {1000, Unit::CentinewtonMetre}), 6);
  EXPECT_EQ(permissibleDeviationPercent(wrench, {1001, Unit::CentinewtonMetre}), 4);
  // 7.375 lbf·ft = 9.9992 N·m, 7.376 lbf·ft = 10.0005 N·m (1 lbf·ft = 1.3558179… N·m).
  EXPECT_EQ(permissibleDeviationPercent(wrench, {7.375, Unit::PoundForceFoot}), 6);
  EXPECT_EQ(permissibleDeviationPercent(wrench, {7.376, Unit::PoundForceFoot}), 4);
  EXPECT_EQ(permissibleDeviationPercent(wrench, {1, Unit::KilogramForceMetre}), 6);
}

TEST(ToolKind, OnlyFixedToolsHaveOneValueAndOnlyUngraduatedOnesNoScale) {
  for (char cls = 'A'; cls <= 'G'; ++cls) {
    const ToolKind kind = *parseToolKind("II", std::string(1, cls));
    EXPECT_EQ(rulesFor(kind).fixedValue, cls == 'B' || cls == 'E') << cls;
    EXPECT_EQ(rulesFor(kind).graduated, cls == 'A' || cls == 'D' || cls == 'G') << cls;
  }
}

TEST(ToolKind, ReadsTypeAndClass) {
  const ToolKind indicatingC{ToolType::Indicating, ToolClass::C};
  EXPECT_EQ(parseToolKind("I", "C"), indicatingC);
  EXPECT_EQ(parseToolKind("i", "c"), indicatingC);
  EXPECT_EQ(parseToolKind("1", "C"), indicatingC);
  EXPECT_EQ(parseToolKind("2", "g"), (ToolKind{ToolType::Setting, ToolClass::G}));
  EXPECT_EQ(writeType(ToolType::Indicating), "I");
  EXPECT_EQ(writeType(ToolType::Setting), "II");
  EXPECT_EQ(writeClass(ToolClass::G), "G");
}

TEST(ToolKind, RefusesClassesThatTheTypeDoesNotHave) {
  for (const char* cls : {"F", "G", "H", "", "AB", "1"}) {
    const auto kind = parseToolKind("I", cls);
    ASSERT_FALSE(kind) << cls;
    EXPECT_EQ(kind.error()[0].field, "class");
    EXPECT_EQ(kind.error()[0].found, cls);
    EXPECT_EQ(kind.error()[0].accepted, "A to E");
  }
  EXPECT_FALSE(parseToolKind("II", "H"));
  EXPECT_FALSE(isDefined({ToolType::Indicating, ToolClass::F}));
  EXPECT_TRUE(isDefined({ToolType::Setting, ToolClass::F}));
}

TEST(ToolKind, NamesEveryProblemAtOnce) {
  const auto kind = parseToolKind("III", "Z");
  ASSERT_FALSE(kind);
  ASSERT_EQ(kind.error().size(), 2u);
  EXPECT_EQ(kind.error()[0].field, "type");
  EXPECT_EQ(kind.error()[1].field, "class");
}

TEST(ToolKind, EachKindHasWordsOfItsOwn) {
  std::set<std::string_view> words;
  for (const char* type : {"I", "II"}) {
    for (char cls = 'A'; cls <= 'G'; ++cls) {
      if (const auto kind = parseToolKind(type, std::string(1, cls))) words.insert(describe(*kind));
    }
  }
  EXPECT_EQ(words.size(), 12u);
  EXPECT_EQ(describe({ToolType::Setting, ToolClass::A}), "adjustable wrench, graduated");
}

}  // namespace
}  // namespace steadyturn
