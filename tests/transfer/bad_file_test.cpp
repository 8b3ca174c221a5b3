// Files that are no table of ours: each gets one clear problem and changes nothing.
#include <gmock/gmock.h>

#include <fstream>

#include "transfer_fixture.h"

namespace steadyturn {
namespace {

using testing::Contains;
using testing::Field;
using testing::HasSubstr;
using testing::SizeIs;

class BadFile : public TransferTest {
 protected:
  Problem onlyProblem(const std::string& bytes) {
    Shop shop = newShop();
    const Problems problems = refused(shop, TableKind::Tools, bytes);
    EXPECT_THAT(problems, SizeIs(1));
    EXPECT_TRUE(shop.tools()->empty());
    return problems.empty() ? Problem{} : problems.front();
  }
};

TEST_F(BadFile, MissingOrADirectory) {
  Shop shop = newShop();
  for (const std::string& path : {in("no such file.csv"), in(".")}) {
    const auto report = shop.importCsv(TableKind::Tools, path, {});
    ASSERT_FALSE(report);
    ASSERT_THAT(report.error(), SizeIs(1));
    EXPECT_EQ(report.error()[0].kind, ProblemKind::FileMissing);
    EXPECT_EQ(report.error()[0].field, path);
  }
}

TEST_F(BadFile, Empty) {
  EXPECT_EQ(onlyProblem("").found, "an empty file");
  EXPECT_EQ(onlyProblem("\xEF\xBB\xBF\r\n").found, "an empty file");
}

TEST_F(BadFile, HeaderWithAnUnknownColumn) {
  const Problem problem = onlyProblem("tool,type,class,max,unit,colour\n");
  EXPECT_EQ(problem.kind, ProblemKind::BadInput);
  EXPECT_EQ(problem.field, "colour");
  EXPECT_EQ(problem.line, 1);
  EXPECT_THAT(problem.accepted, HasSubstr("interval_days"));
}

TEST_F(BadFile, HeaderWithoutANeededColumnOrWithOneTwice) {
  EXPECT_EQ(onlyProblem("tool,type,class,max\nT,II,A,10\n").field, "unit");
  EXPECT_EQ(onlyProblem("tool,type,class,max,unit,max\n").field, "max");
}

TEST_F(BadFile, TellsEveryProblemOfAHeaderAtOnce) {
  Shop shop = newShop();
  const Problems problems = refused(shop, TableKind::Tools, "tool;typ;class;max\n");
  EXPECT_THAT(problems, SizeIs(3));
  for (const char* column : {"typ", "type", "unit"}) EXPECT_THAT(problems, Contains(Field(&Problem::field, column)));
}

TEST_F(BadFile, SeparatedByTabs) {
  Shop shop = newShop();
  const Problems problems = refused(shop, TableKind::Tools, "tool\ttype\tclass\tmax\tunit\n");
  EXPECT_THAT(problems, Contains(Field(&Problem::found, "an unknown column")));
}

TEST_F(BadFile, Latin1) {
  const Problem problem = onlyProblem(
      "tool,type,class,max,unit,maker\nT,II,A,10,N.m,Sch\xFC"
      "tz\n");
  EXPECT_EQ(problem.field, "maker");
  EXPECT_EQ(problem.line, 2);
  EXPECT_THAT(problem.accepted, HasSubstr("UTF-8"));
}

TEST_F(BadFile, ALineOf200Megabytes) {
  const std::string path = in("long.csv");
  {
    std::ofstream file(path, std::ios::binary);
    file << "tool,type,class,max,unit\nT1,II,A,10,N.m\n";
    const std::string megabyte(1'000'000, 'x');
    for (int i = 0; i < 200; ++i) file << megabyte;
  }
  Shop shop = newShop();
  const auto report = shop.importCsv(TableKind::Tools, path, {});
  ASSERT_FALSE(report);
  ASSERT_THAT(report.error(), SizeIs(1));
  EXPECT_EQ(report.error()[0].line, 3);
  EXPECT_THAT(report.error()[0].found, HasSubstr("1 MiB"));
  EXPECT_TRUE(shop.tools()->empty());
}

TEST_F(BadFile, AQuoteLeftOpen) {
  const Problem problem = onlyProblem("tool,type,class,max,unit\nT1,II,A,10,N.m\n\"T2,II,A,10,N.m\nT3,II,A,10,N.m\n");
  EXPECT_EQ(problem.line, 3);
  EXPECT_EQ(problem.field, "tool");
}

TEST_F(BadFile, TakesAHeaderAloneAndBlankLines) {
  Shop shop = newShop();
  EXPECT_EQ(imported(shop, TableKind::Tools, "tool,type,class,max,unit\r\n").rows, 0);
  EXPECT_EQ(imported(shop, TableKind::Tools, "unit;tool;type;class;max\nN.m;T1;II;A;10\n;;;;\n\n\r\n").records, 1);
}

}  // namespace
}  // namespace steadyturn
