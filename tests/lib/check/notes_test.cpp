#include "notes.h"

#include <gtest/gtest.h>

#include "check_fixture.h"

namespace steadyturn {
namespace {

using testing::exampleCheck;
using testing::newtonMetres;
using testing::pointAt;

std::vector<std::string> notesOf(const CheckInput& check) {
  std::vector<std::string> words;
  const CheckResult result = evaluateCheck(check).value();
  for (const Note& note : result.notes) words.push_back(writeNote(note));
  return words;
}

CheckInput completeCheck() {
  CheckInput check = exampleCheck();
  check.points = {pointAt(20, {20, 20, 20, 20, 20}), pointAt(60, {60, 60, 60, 60, 60}),
                  pointAt(100, {100, 100, 100, 100, 100})};
  return check;
}

using Words = std::vector<std::string>;

TEST(Notes, ACompleteCheckHasNone) { EXPECT_EQ(notesOf(completeCheck()), Words{}); }

TEST(Notes, TooFewReadingsForTheClass) {
  CheckInput check = completeCheck();
  check.points[0] = pointAt(20, {20, 20, 20});
  EXPECT_EQ(notesOf(check), Words{"20 N·m: 3 readings, the standard asks for 5 (ISO 6789-1)"});
  check.points[0] = pointAt(20, {20});
  EXPECT_EQ(notesOf(check), Words{"20 N·m: 1 reading, the standard asks for 5 (ISO 6789-1)"});
  check = completeCheck();
  check.kind.cls = ToolClass::C;  // asks for 10
  EXPECT_EQ(notesOf(check).size(), 3u);
}

TEST(Notes, SetPointsThatNobodyTook) {
  CheckInput check = completeCheck();
  check.points.erase(check.points.begin() + 1);
  ASSERT_EQ(notesOf(check), Words{"60 N·m: no readings there, the standard asks for this set-point (ISO 6789-1)"});
}

TEST(Notes, ASetPointWithinFivePercentOfTheMaximumCountsAsTaken) {
  CheckInput check = completeCheck();
  check.points[1].target = newtonMetres(65);
  EXPECT_EQ(notesOf(check), Words{});
  check.points[1].target = newtonMetres(55);
  EXPECT_EQ(notesOf(check), Words{});
  check.points[1].target = newtonMetres(54.9);
  EXPECT_EQ(notesOf(check).size(), 1u);
}

TEST(Notes, TheLowestMarkedValueIsAskedForWhereItIsKnown) {
  CheckInput check = completeCheck();
  check.minimum = newtonMetres(10);
  EXPECT_EQ(notesOf(check), Words{"10 N·m: no readings there, the standard asks for this set-point (ISO 6789-1)"});
}

TEST(Notes, AFixedToolIsAskedForItsValueOnly) {
  CheckInput check = completeCheck();
  check.kind.cls = ToolClass::B;
  check.maximum = newtonMetres(45);
  check.points = {pointAt(45, {45, 45, 45, 45, 45, 45, 45, 45, 45, 45})};
  EXPECT_EQ(notesOf(check), Words{});
}

// A quarter of 4 % is 1 %, at k = 2 (ISO 6789-1; read in a manufacturer's sheet as "± 1 %").
TEST(Notes, AReferenceMoreUncertainThanAQuarterOfTheLimit) {
  CheckInput check = completeCheck();
  check.reference = {.expandedPercent = 1};
  EXPECT_EQ(notesOf(check), Words{});
  check.reference = {.expandedPercent = 1.2};
  ASSERT_EQ(notesOf(check).size(), 1u);
  EXPECT_EQ(notesOf(check)[0],
            "Reference: expanded uncertainty 1.2 % (k = 2), the standard asks for at most 1 %, a quarter of the "
            "permissible deviation (ISO 6789-1)");
  check.reference = {.expandedPercent = 1.2, .coverageFactor = 3};  // 0.8 % at k = 2
  EXPECT_EQ(notesOf(check), Words{});
  check.reference = {.expandedPercent = 0.6, .coverageFactor = 1};  // 1.2 % at k = 2
  EXPECT_EQ(notesOf(check).size(), 1u);
}

}  // namespace
}  // namespace steadyturn
