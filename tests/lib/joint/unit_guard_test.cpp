#include "unit_guard.h"

#include <gtest/gtest.h>

#include <algorithm>
#include <cstdio>
#include <map>

#include "reference_table.h"

namespace steadyturn {
namespace {

using testing::ReferenceTable;

SpecSituation m8(ParentMaterial parent = ParentMaterial::Hard) {
  return {.thread = *parseThread("M8", "thread"), .propertyClass = PropertyClass::C8_8, .parent = parent};
}

TEST(UnitGuard, rangeHoldsTheTabulatedTorques) {
  // VDI 2230 Part 1, M8 8.8: 21.6, 24.6 and 27.3 N·m at friction 0.10, 0.12 and 0.14 (from memory).
  const auto sensible = sensibleTorque(m8());
  for (const double tabulated : {21.6, 24.6, 27.3}) {
    EXPECT_FALSE(questionOf({tabulated, Unit::NewtonMetre}, sensible)) << tabulated;
  }
  EXPECT_GT(sensible.high.value, 27.3);
  EXPECT_LT(sensible.low.value, 21.6);
}

TEST(UnitGuard, asksForTheOtherUnit) {
  // 40 lbf·ft is 54 N·m: twice what VDI 2230 tabulates for M8 8.8 (10.9: 36.1 N·m at 0.12).
  SpecSituation strong = m8();
  strong.propertyClass = PropertyClass::C10_9;
  const auto question = questionOf({40, Unit::PoundForceFoot}, sensibleTorque(strong));
  ASSERT_TRUE(question);
  ASSERT_FALSE(question->wouldFit.empty());
  EXPECT_EQ(question->wouldFit.front(), Unit::NewtonMetre);
  const auto words = writeQuestion(*question, "M8");
  EXPECT_TRUE(words.starts_with("40 lbf·ft on M8? 40 N·m would fit.")) << words;
}

TEST(UnitGuard, offersNoUnitWhereNoneFits) {
  const auto question = questionOf({400, Unit::NewtonMetre}, sensibleTorque(m8()));
  ASSERT_TRUE(question);
  EXPECT_EQ(question->wouldFit, std::vector<Unit>{}) << writeQuestion(*question, "M8");
}

TEST(UnitGuard, softParentsTakeLess) {
  const double steel = sensibleTorque(m8()).high.value;
  const double aluminium = sensibleTorque(m8(ParentMaterial::SoftMetal)).high.value;
  const double plastic = sensibleTorque(m8(ParentMaterial::Plastic)).high.value;
  EXPECT_LT(aluminium, steel);
  EXPECT_LT(plastic, aluminium);
}

TEST(UnitGuard, readsTheMaterialsWords) {
  EXPECT_EQ(parentMaterialOf("Cast Iron"), ParentMaterial::Hard);
  EXPECT_EQ(parentMaterialOf("aluminium alloy"), ParentMaterial::SoftMetal);
  EXPECT_EQ(parentMaterialOf("PA66 plastic on steel"), ParentMaterial::Plastic);
  EXPECT_EQ(parentMaterialOf(""), ParentMaterial::Unknown);
}

struct Tally {
  int swapped = 0, caught = 0, rightUnit = 0, falseAlarms = 0;
};

std::optional<UnitQuestion> questionOfRow(const ReferenceTable& table, std::size_t row) {
  SpecSituation situation{.thread = *parseThread(table.text(row, "thread"), "thread"),
                          .propertyClass = {},
                          .parent = parentMaterialOf(table.text(row, "part_material")),
                          .sealed = table.has(row, "seal"),
                          .thenAngle = table.has(row, "angle_deg")};
  if (table.has(row, "property_class")) {
    situation.propertyClass = *parsePropertyClass(table.text(row, "property_class"), "property_class");
  }
  return questionOf({table.figure(row, "target").value, *parseUnit(table.text(row, "unit"))},
                    sensibleTorque(situation));
}

// 200 invented specifications drawn from published tables, 40 with their unit swapped
// (tests/data/guard/make_specs.py).
TEST(UnitGuard, onTwoHundredSpecifications) {
  const auto table = ReferenceTable::load("../guard/specs.csv");
  ASSERT_EQ(table.rows(), 200U);
  Tally all;
  std::map<std::string, Tally> bySwap;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const auto question = questionOfRow(table, row);
    if (!table.has(row, "unit_on_paper")) {
      if (question) {
        ++all.falseAlarms;
        std::printf("  false alarm: %s %s %s %s: %s\n", table.text(row, "component").c_str(),
                    table.text(row, "thread").c_str(), table.text(row, "property_class").c_str(),
                    table.text(row, "part_material").c_str(), writeQuestion(*question, "it").c_str());
      }
      continue;
    }
    const auto paper = *parseUnit(table.text(row, "unit_on_paper"));
    auto& swap = bySwap[table.text(row, "unit_on_paper") + " read as " + table.text(row, "unit")];
    const bool right = question && std::ranges::count(question->wouldFit, paper) > 0;
    for (Tally* tally : {&all, &swap}) {
      ++tally->swapped;
      tally->caught += question ? 1 : 0;
      tally->rightUnit += right ? 1 : 0;
    }
  }
  std::printf(
      "unit guard: %d swapped, %d caught (%d with the right unit offered), %d missed; %d false alarms in %d\n",
      all.swapped, all.caught, all.rightUnit, all.swapped - all.caught, all.falseAlarms, 200 - all.swapped);
  for (const auto& [swap, tally] : bySwap) {
    std::printf("  %-22s %2d of %2d caught\n", swap.c_str(), tally.caught, tally.swapped);
  }
  ASSERT_EQ(all.swapped, 40);
  // A guard that cries often is not heard: at most one sound specification in fifty is questioned.
  EXPECT_LE(all.falseAlarms, 3);
  // What differs by nine times or more is seen; N·m and lbf·ft differ by a third, less than friction does.
  for (const auto& [swap, tally] : bySwap) {
    if (swap == "N.m read as lbf.ft" || swap == "lbf.ft read as N.m") continue;
    EXPECT_EQ(tally.caught, tally.swapped) << swap;
  }
}

}  // namespace
}  // namespace steadyturn
