#include "picker.h"

#include <gtest/gtest.h>

#include <QLineEdit>
#include <QSignalSpy>

#include "keys.h"

namespace steadyturn {
namespace {

class PickerTest : public ::testing::Test {
 protected:
  PickerTest() : picker("Tool", "type") {
    picker.setItems({{"W06", "click wrench, pit 1"}, {"W07", "click wrench, pit 2"}, {"W070", "long wrench"}});
  }
  Picker picker;
};

TEST_F(PickerTest, takesAnIdWhateverItsCase) {
  EXPECT_EQ(picker.resolve("w06"), "W06");
  EXPECT_EQ(picker.resolve(" W07 "), "W07");  // though W070 contains it
}

TEST_F(PickerTest, takesAnyPartThatFitsOnlyOne) {
  EXPECT_EQ(picker.resolve("long"), "W070");
  EXPECT_EQ(picker.resolve("click"), "");
  EXPECT_EQ(picker.resolve("nothing"), "");
}

TEST_F(PickerTest, typingAndEnterPicks) {
  QSignalSpy picked(&picker, &Picker::picked);
  present(picker);
  picker.setFocus();
  Keys keys;
  keys.type("pit 2");
  keys.press(Qt::Key_Return);
  ASSERT_EQ(picked.count(), 1);
  EXPECT_EQ(picked.front().front().toString(), "W07");
  EXPECT_EQ(picker.pickedId(), "W07");
}

TEST_F(PickerTest, whatNamesNothingIsToldAndThePickedOneStays) {
  picker.pick("W06");
  QSignalSpy unknown(&picker, &Picker::unknown);
  present(picker);
  picker.setFocus();
  picker.lineEdit()->selectAll();
  Keys keys;
  keys.type("zzz");
  keys.press(Qt::Key_Return);
  ASSERT_GE(unknown.count(), 1);
  EXPECT_EQ(unknown.front().front().toString(), "zzz");
  EXPECT_EQ(picker.pickedId(), "W06");
  EXPECT_TRUE(picker.currentText().startsWith("W06"));
}

}  // namespace
}  // namespace steadyturn
