#include <gtest/gtest.h>

#include "joint.h"
#include "reference_table.h"

namespace steadyturn {
namespace {

using testing::ReferenceTable;

constexpr PropertyClass allClasses[] = {PropertyClass::C4_6, PropertyClass::C5_6, PropertyClass::C8_8,
                                        PropertyClass::C10_9, PropertyClass::C12_9};

TEST(PropertyClass, ReadsWhatItWrites) {
  for (const PropertyClass cls : allClasses) EXPECT_EQ(parsePropertyClass(writePropertyClass(cls), "f"), cls);
  for (const char* typed : {"", "8", "8,8", "9.8", "8.80"}) {
    const auto read = parsePropertyClass(typed, "property_class");
    ASSERT_FALSE(read) << typed;
    EXPECT_EQ(read.error()[0].field, "property_class");
    EXPECT_EQ(read.error()[0].found, typed);
  }
}

TEST(PropertyClass, ProofLoadsAreTabulatedNotMultiplied) {
  const auto table = ReferenceTable::load("iso_898_1.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const Thread thread = parseThread(table.text(row, "thread"), "").value();
    for (const PropertyClass cls : allClasses) {
      const auto load = tabulatedProofLoadN(thread, cls);
      ASSERT_TRUE(load) << table.text(row, "thread");
      EXPECT_EQ(*load, table.figure(row, writePropertyClass(cls)).value)
          << table.text(row, "thread") << " " << writePropertyClass(cls);
    }
  }
}

TEST(PropertyClass, NoProofLoadWhereTheTableHasNone) {
  EXPECT_FALSE(tabulatedProofLoadN(parseThread("M8x1", "").value(), PropertyClass::C8_8));
  EXPECT_FALSE(tabulatedProofLoadN(parseThread("M36", "").value(), PropertyClass::C4_6));
  EXPECT_FALSE(tabulatedProofLoadN({.diameterMm = 7, .pitchMm = 1}, PropertyClass::C8_8));
}

// ISO 898-1 (from memory): proof stress 8.8 is 580 MPa to 16 mm and 600 above, 10.9 is 830, 12.9 is 970. A slip in a
// row of the table would leave its neighbours' ratio of load to area.
TEST(PropertyClass, ProofLoadsFollowTheProofStressOfEveryRow) {
  for (const char* name : {"M3", "M4", "M5", "M6", "M8", "M10", "M12", "M14", "M16", "M18", "M20", "M22", "M24",
                           "M27", "M30", "M33", "M36", "M39"}) {
    const Thread thread = parseThread(name, "").value();
    const double area = tabulatedStressAreaMm2(thread).value();
    const auto stress = [&](PropertyClass cls) { return tabulatedProofLoadN(thread, cls).value() / area; };
    EXPECT_NEAR(stress(PropertyClass::C8_8), thread.diameterMm > 16 ? 600 : 580, 3) << name;
    EXPECT_NEAR(stress(PropertyClass::C10_9), 830, 4) << name;
    EXPECT_NEAR(stress(PropertyClass::C12_9), 970, 5) << name;
  }
}

// VDI 2230 (from memory): 8.8 counts with 640 MPa up to 16 mm, 660 MPa above.
TEST(PropertyClass, ProofStrengthOfEightEightChangesAboveSixteen) {
  EXPECT_EQ(proofStrengthMPa(PropertyClass::C8_8, 16), 640);
  EXPECT_EQ(proofStrengthMPa(PropertyClass::C8_8, 18), 660);
  EXPECT_EQ(proofStrengthMPa(PropertyClass::C4_6, 24), 240);
  EXPECT_EQ(proofStrengthMPa(PropertyClass::C5_6, 8), 300);
  EXPECT_EQ(proofStrengthMPa(PropertyClass::C10_9, 24), 940);
  EXPECT_EQ(proofStrengthMPa(PropertyClass::C12_9, 8), 1100);
}

}  // namespace
}  // namespace steadyturn
