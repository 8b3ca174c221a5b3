#include "reference_table.h"

#include <gtest/gtest.h>

#include <stdexcept>

namespace steadyturn::testing {
namespace {

ReferenceTable tableOf(std::string_view text) { return ReferenceTable::read(text, "test.csv"); }

TEST(ReferenceTable, RefusesFiguresWithoutASource) {
  EXPECT_THROW(tableOf("a,b\n1,2\n"), std::runtime_error);
  EXPECT_THROW(tableOf("# source:\n# digits: as printed\na\n1\n"), std::runtime_error);
  EXPECT_THROW(tableOf("# digits: as printed\n# source: a book\na\n1\n"), std::runtime_error);
  EXPECT_THROW(ReferenceTable::load("no_such_table.csv"), std::runtime_error);
}

TEST(ReferenceTable, RefusesFiguresThatDoNotSayTheirDigits) {
  EXPECT_THROW(tableOf("# source: a book\na\n1\n"), std::runtime_error);
  EXPECT_THROW(tableOf("# source: a book\n# digits: many\na\n1\n"), std::runtime_error);
}

TEST(ReferenceTable, RefusesATableThatWouldCheckNothing) {
  EXPECT_THROW(tableOf("# source: a book\n# digits: as printed\n"), std::runtime_error);
  EXPECT_THROW(tableOf("# source: a book\n# digits: as printed\na,b\n"), std::runtime_error);
  EXPECT_THROW(tableOf("# source: a book\n# digits: as printed\na,b\n1\n"), std::runtime_error);
}

TEST(ReferenceTable, RefusesCellsThatAreNoFigure) {
  const ReferenceTable table = tableOf("# source: a book\n# digits: as printed\na,b\n1x,\n");
  EXPECT_THROW(table.figure(0, "a"), std::runtime_error);
  EXPECT_THROW(table.figure(0, "b"), std::runtime_error);
  EXPECT_THROW(table.figure(0, "c"), std::runtime_error);
  EXPECT_FALSE(table.has(0, "b"));
}

TEST(ReferenceTable, ToleratesHalfAUnitOfTheLastPrintedDigit) {
  const ReferenceTable table =
      tableOf("# source: a book, table 1\n# digits: as printed\n# a remark\nname,f\nx,24.60\ny,48\nz,1.25e-3\n");
  EXPECT_EQ(table.source(), "a book, table 1");
  ASSERT_EQ(table.rows(), 3u);
  EXPECT_EQ(table.text(1, "name"), "y");
  EXPECT_DOUBLE_EQ(table.figure(0, "f").value, 24.6);
  EXPECT_DOUBLE_EQ(table.figure(0, "f").tolerance, 0.005);
  EXPECT_DOUBLE_EQ(table.figure(1, "f").tolerance, 0.5);
  EXPECT_DOUBLE_EQ(table.figure(2, "f").tolerance, 0.5e-5);
}

TEST(ReferenceTable, ToleratesHalfAUnitOfTheStatedDigits) {
  EXPECT_DOUBLE_EQ(tableOf("# source: s\n# digits: 3 significant\na\n33700\n").figure(0, "a").tolerance, 50);
  EXPECT_DOUBLE_EQ(tableOf("# source: s\n# digits: 2 decimals\na\n5\n").figure(0, "a").tolerance, 0.005);
}

}  // namespace
}  // namespace steadyturn::testing
