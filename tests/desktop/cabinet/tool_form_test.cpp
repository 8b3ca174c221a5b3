#include "tool_form.h"

#include <gtest/gtest.h>

namespace steadyturn {
namespace {

ToolForm good() {
  ToolForm form;
  form.id = " W90 ";
  form.type = "II";
  form.cls = "A";
  form.minimum = "2,5";
  form.maximum = "25";
  form.resolution = "0.25";
  return form;
}

TEST(ToolForm, readsWhatIsTyped) {
  const Result<Tool> tool = good().tool();
  ASSERT_TRUE(tool);
  EXPECT_EQ(tool->id, "W90");
  EXPECT_EQ(tool->minimum, 2.5);
  EXPECT_EQ(tool->maximum, 25);
  EXPECT_FALSE(tool->intervalDays);
  EXPECT_FALSE(tool->limitPercent);
}

TEST(ToolForm, tellsAllThatIsWrongAtOnce) {
  ToolForm form = good();
  form.maximum = "2O";
  form.resolution = "-1";
  form.intervalDays = "12.5";
  const Result<Tool> tool = form.tool();
  ASSERT_FALSE(tool);
  EXPECT_EQ(tool.error().size(), 3u);
}

}  // namespace
}  // namespace steadyturn
