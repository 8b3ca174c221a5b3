#include "text_table.h"

#include <gtest/gtest.h>

#include <algorithm>

#include "figures.h"

namespace steadyturn {
namespace {

TEST(TextTable, AlignsByWhatATerminalShows) {
  TextTable table({{"part"}, {"N\xC2\xB7m", Side::Right}});
  table.row({"cover \xE6\x89\xAD", "25"});
  table.row({"plug", "3.5"});
  EXPECT_EQ(table.text(),
            "part      N\xC2\xB7m\n"
            "--------  ---\n"
            "cover \xE6\x89\xAD   25\n"
            "plug      3.5\n");
}

TEST(TextTable, ShowsNoControlCharacters) {
  TextTable table({{"tool"}});
  table.row({"a\x1b[2Jb\nc"});
  const std::string text = table.text();
  EXPECT_EQ(text.find('\x1b'), std::string::npos);
  EXPECT_EQ(std::count(text.begin(), text.end(), '\n'), 3);
}

TEST(FactLines, LeaveOutWhatIsAbsent) {
  EXPECT_EQ(factLines({{"tool", "T1"}, {"serial", ""}, {"drive", "square"}}), "tool   T1\ndrive  square\n");
}

TEST(PercentFigure, NeverRoundsToCertainty) {
  EXPECT_EQ(percentFigure(0.999999), ">99.99");
  EXPECT_EQ(percentFigure(1.0), ">99.99");
  EXPECT_EQ(percentFigure(0.0), "<0.01");
  EXPECT_EQ(percentFigure(0.98765), "98.8");
  EXPECT_EQ(percentFigure(std::nullopt), "-");
}

}  // namespace
}  // namespace steadyturn
