// A file that was taken in before is known by its content, not by its name.
#include <gmock/gmock.h>

#include "transfer_fixture.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;
using testing::SizeIs;

class Again : public TransferTest {
 protected:
  Shop shop_ = smallShop();
  const std::string bytes_ =
      "tool,date,phase,target,reading,unit\nTW-1,2026-01-31,as_found,60,60.1,N.m\nTW-1,2026-01-31,as_found,60,60.2,N."
      "m\n";
  const ImportOptions again_{.decimalComma = false, .again = true, .by = {}};
};

TEST_F(Again, IsRefusedInOneLine) {
  imported(shop_, TableKind::Checks, bytes_);
  const Problems problems = refused(shop_, TableKind::Checks, bytes_);
  ASSERT_THAT(problems, SizeIs(1));
  EXPECT_EQ(problems[0].kind, ProblemKind::Conflict);
  EXPECT_THAT(problems[0].found, HasSubstr("imported before"));
}

TEST_F(Again, AskedForStillRefusesDuplicates) {
  imported(shop_, TableKind::Checks, bytes_);
  const Problems problems = refused(shop_, TableKind::Checks, bytes_, again_);
  ASSERT_THAT(problems, SizeIs(1));
  EXPECT_EQ(problems[0].line, 2);
  EXPECT_EQ(problems[0].field, "date");
}

TEST_F(Again, AskedForTakesWhatIsNoDuplicate) {
  imported(shop_, TableKind::Checks, bytes_);
  const std::int64_t id = shop_.checksOf("TW-1")->front().id;
  // Corrected by a check of another day, that day is free again.
  const CheckDraft draft{.tool = "TW-1",
                         .reference = {},
                         .by = {},
                         .date = parseDate("2026-01-30", "date").value(),
                         .temperatureC = {},
                         .humidityPercent = {},
                         .note = {},
                         .points = {{.target = "60", .readings = {"60.1"}}}};
  ASSERT_TRUE(shop_.correctCheck(id, draft, "the day was wrong"));
  EXPECT_THAT(refused(shop_, TableKind::Checks, bytes_), SizeIs(1));
  EXPECT_EQ(imported(shop_, TableKind::Checks, bytes_, again_).records, 1);
}

TEST_F(Again, IsNotRememberedOfARefusedFile) {
  const std::string tooEarly = "tool,date,phase,target,reading,unit\nTW-3,2026-01-31,as_found,60,60.1,N.m\n";
  EXPECT_THAT(refused(shop_, TableKind::Checks, tooEarly), SizeIs(1));
  imported(shop_, TableKind::Tools, "tool,type,class,max,unit\nTW-3,II,A,100,N.m\n");
  EXPECT_EQ(imported(shop_, TableKind::Checks, tooEarly).records, 1);
}

TEST_F(Again, IsNotHeldAgainstAFileWithoutRows) {
  const std::string header = "tool,type,class,max,unit\n";
  imported(shop_, TableKind::Tools, header);
  imported(shop_, TableKind::Tools, header);
}

}  // namespace
}  // namespace steadyturn
