#include "thread.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "reference_table.h"

namespace steadyturn {
namespace {

using ::testing::HasSubstr;
using testing::ReferenceTable;

Thread thread(std::string_view text) { return parseThread(text, "thread").value(); }

TEST(Thread, ReadsWhatPeopleType) {
  for (const char* typed : {"M14x1.5", "M14X1.5", "M14×1.5", "m14 x 1,5", " M14 * 1.5 "}) {
    const auto read = parseThread(typed, "thread");
    ASSERT_TRUE(read) << typed;
    EXPECT_EQ(read->diameterMm, 14) << typed;
    EXPECT_EQ(read->pitchMm, 1.5) << typed;
    EXPECT_FALSE(read->coarse) << typed;
    EXPECT_EQ(writeThread(*read), "M14x1.5");
  }
}

// ISO 261, coarse pitches (domain knowledge of the trade, from memory).
TEST(Thread, KnowsEveryCoarsePitch) {
  const std::pair<const char*, double> pitches[] = {
      {"M3", 0.5},   {"M4", 0.7}, {"M5", 0.8},  {"M6", 1},    {"M8", 1.25}, {"M10", 1.5},
      {"M12", 1.75}, {"M14", 2},  {"M16", 2},   {"M18", 2.5}, {"M20", 2.5}, {"M22", 2.5},
      {"M24", 3},    {"M27", 3},  {"M30", 3.5}, {"M33", 3.5}, {"M36", 4},   {"M39", 4},
  };
  for (const auto& [name, pitch] : pitches) {
    EXPECT_EQ(thread(name).pitchMm, pitch) << name;
    EXPECT_TRUE(thread(name).coarse) << name;
    EXPECT_EQ(writeThread(thread(name)), name);
  }
}

TEST(Thread, ACoarsePitchWrittenOutIsStillCoarse) {
  EXPECT_TRUE(thread("M8x1.25").coarse);
  EXPECT_EQ(writeThread(thread("M8x1.25")), "M8");
}

TEST(Thread, RefusesWhatIsNoThreadAndSaysWhatIs) {
  for (const char* typed : {"", "M", "8", "M7.3", "M8x", "M8x2", "M8x1.5", "M8x0", "M8x-1", "MM8", "M8 coarse", "Mx1",
                            "M1e1", "G1/4", "Mnan", "M8xinf", "M40"}) {
    const auto read = parseThread(typed, "thread");
    ASSERT_FALSE(read) << typed;
    ASSERT_EQ(read.error().size(), 1U);
    EXPECT_EQ(read.error()[0].field, "thread");
    EXPECT_EQ(read.error()[0].found, typed);
  }
  EXPECT_THAT(parseThread("M8x2", "thread").error()[0].accepted, HasSubstr("1.25, 1, 0.75"));
  EXPECT_THAT(parseThread("M40", "thread").error()[0].accepted, HasSubstr("M39"));
}

TEST(Thread, NominalStressAreasAreTheStandards) {
  const auto table = ReferenceTable::load("iso_898_1.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const std::string& name = table.text(row, "thread");
    const auto expected = table.figure(row, "stress_area");
    ASSERT_TRUE(tabulatedStressAreaMm2(thread(name))) << name;
    EXPECT_EQ(*tabulatedStressAreaMm2(thread(name)), expected.value) << name;
    // The formula must round to the table.
    EXPECT_NEAR(stressAreaMm2(thread(name)), expected.value, expected.tolerance) << name;
  }
  EXPECT_FALSE(tabulatedStressAreaMm2(thread("M8x1")));
}

TEST(Thread, StressAreasOfFineThreads) {
  const auto table = ReferenceTable::load("fine_stress_areas.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const auto expected = table.figure(row, "stress_area");
    // A last digit more: the factors of ISO 724 are themselves printed with six digits.
    EXPECT_NEAR(stressAreaMm2(thread(table.text(row, "thread"))), expected.value, 2 * expected.tolerance)
        << table.text(row, "thread");
  }
}

// ISO 724 (from memory): M8 has d2 = 7.188 and d3 = 6.466, M12 10.863 and 9.853, M10 9.026 and 8.160.
TEST(Thread, DiametersOfIso724) {
  EXPECT_NEAR(pitchDiameterMm(thread("M8")), 7.188, 0.0005);
  EXPECT_NEAR(minorDiameterMm(thread("M8")), 6.466, 0.0005);
  EXPECT_NEAR(pitchDiameterMm(thread("M10")), 9.026, 0.0005);
  EXPECT_NEAR(minorDiameterMm(thread("M10")), 8.160, 0.0005);
  EXPECT_NEAR(pitchDiameterMm(thread("M12")), 10.863, 0.0005);
  EXPECT_NEAR(minorDiameterMm(thread("M12")), 9.853, 0.0005);
}

}  // namespace
}  // namespace steadyturn
