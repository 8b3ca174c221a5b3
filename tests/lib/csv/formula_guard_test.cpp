// The characters that begin a formula: common practice (= + - @ and the blanks TAB and CR that spreadsheets pass
// over).
#include "formula_guard.h"

#include <gtest/gtest.h>

namespace steadyturn {
namespace {

TEST(FormulaGuard, GuardsWhatASpreadsheetWouldRun) {
  for (const char* text : {"=1+1", "+1", "-1", "@sum", "\t=1", "\r=1", "'=1", "''@"})
    EXPECT_TRUE(needsFormulaGuard(text)) << text;
  for (const char* text : {"", "'", "''", "'twas", "1/2 in", "a=b", " =1"})
    EXPECT_FALSE(needsFormulaGuard(text)) << text;
}

TEST(FormulaGuard, TakesOffOneApostropheAndOnlyAGuard) {
  EXPECT_EQ(withoutFormulaGuard("'=1+1"), "=1+1");
  EXPECT_EQ(withoutFormulaGuard("''=1+1"), "'=1+1");
  EXPECT_EQ(withoutFormulaGuard("=1+1"), "=1+1");
  EXPECT_EQ(withoutFormulaGuard("'twas"), "'twas");
  EXPECT_EQ(withoutFormulaGuard("'"), "'");
  EXPECT_EQ(withoutFormulaGuard(""), "");
}

}  // namespace
}  // namespace steadyturn
