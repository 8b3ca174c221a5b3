#include <QComboBox>
#include <QHeaderView>
#include <QLabel>
#include <QPushButton>
#include <QScrollBar>
#include <QSignalSpy>
#include <QTableView>

#include "cabinet_place.h"
#include "message_line.h"
#include "one_place.h"
#include "shop_fleet.h"
#include "text.h"

namespace steadyturn {
namespace {

class CabinetTest : public OnePlace<CabinetPlace> {
 protected:
  void SetUp() override {
    OnePlace::SetUp();
    table_ = named<QTableView>(*place_, "Tools");
    ASSERT_TRUE(table_);
  }
  QString cell(int row, int column) const { return table_->model()->index(row, column).data().toString(); }
  QTableView* table_ = nullptr;
};

TEST_F(CabinetTest, isThereBeforeItsFiguresAre) {
  CabinetPlace fresh(*shop_);
  EXPECT_TRUE(fresh.model().working());
}

TEST_F(CabinetTest, showsEveryToolAsTheShopSeesIt) {
  const Shop shop = open();
  const auto overview = shop.overview(shop.today());
  ASSERT_TRUE(overview);
  ASSERT_EQ(table_->model()->rowCount(), static_cast<int>(overview->size()));
  for (const ToolOverview& tool : *overview) {
    const int row = place_->model().rowOf(tool.tool.id);
    ASSERT_GE(row, 0);
    EXPECT_EQ(place_->model().at(row)->standing, tool.standing);
    EXPECT_EQ(place_->model().at(row)->dueDate, tool.dueDate);
    EXPECT_EQ(place_->model().at(row)->predictedPercent, tool.predictedPercent);
  }
}

TEST_F(CabinetTest, typingFilters) {
  keys_.type("pit click");  // in whatever order
  ASSERT_GT(table_->model()->rowCount(), 0);
  for (int row = 0; row < table_->model()->rowCount(); ++row) {
    EXPECT_TRUE(cell(row, CabinetModel::DescriptionColumn).contains("pit"));
  }
  keys_.press(Qt::Key_Escape);
  EXPECT_EQ(table_->model()->rowCount(), place_->model().rowCount());
  keys_.type("no such wrench");
  EXPECT_EQ(table_->model()->rowCount(), 0);
}

TEST_F(CabinetTest, filtersByStanding) {
  auto* standing = named<QComboBox>(*place_, "Show tools of this standing");
  ASSERT_TRUE(standing);
  const int row = standing->findData(static_cast<int>(Standing::Ready));
  ASSERT_GE(row, 0);
  standing->setFocus();
  while (standing->currentIndex() != row) {
    const int before = standing->currentIndex();
    keys_.press(Qt::Key_Down);
    ASSERT_NE(standing->currentIndex(), before);
  }
  EXPECT_EQ(table_->model()->rowCount(), place_->model().counts()[Standing::Ready]);
}

TEST_F(CabinetTest, sortsNumbersAsNumbersAndDatesAsDates) {
  table_->sortByColumn(CabinetModel::RangeColumn, Qt::AscendingOrder);
  double before = 0;
  for (int row = 0; row < table_->model()->rowCount(); ++row) {
    const double maximum =
        open().tool(toText(cell(row, CabinetModel::ToolColumn)))->maximumTorque().torque().newtonMetres();
    EXPECT_GE(maximum, before);
    before = maximum;
  }
}

TEST_F(CabinetTest, enterOpensTheHistoryOfTheFirstFind) {
  QSignalSpy wanted(place_.get(), &CabinetPlace::historyWanted);
  keys_.type("W07");
  keys_.press(Qt::Key_Return);
  ASSERT_EQ(wanted.count(), 1);
  EXPECT_EQ(wanted.front().front().toString(), "W07");
}

TEST_F(CabinetTest, holdsAToolWithItsReasonByKeyboard) {
  keys_.type("W06");
  keys_.press(Qt::Key_O, Qt::AltModifier);
  keys_.type("dropped from the pit edge");
  keys_.press(Qt::Key_Return);
  const Result<Tool> tool = open().tool("W06");
  EXPECT_EQ(tool->status, ToolStatus::Held);
  EXPECT_EQ(tool->statusReason, "dropped from the pit edge");
  ASSERT_TRUE(wait([this] {
    const int row = place_->model().rowOf("W06");
    return place_->model().at(row)->standing == Standing::Held;
  }));
}

TEST_F(CabinetTest, aHoldWithoutAReasonIsRefusedInALine) {
  keys_.type("W06");
  keys_.press(Qt::Key_O, Qt::AltModifier);
  keys_.press(Qt::Key_Return);
  EXPECT_EQ(open().tool("W06")->status, ToolStatus::InService);
  EXPECT_EQ(place_->findChild<MessageLine*>()->tone(), Tone::Bad);
  EXPECT_FALSE(place_->findChild<MessageLine*>()->text().isEmpty());
}

TEST_F(CabinetTest, addsAToolByKeyboard) {
  keys_.press(Qt::Key_A, Qt::AltModifier);
  keys_.type("W90");
  keys_.press(Qt::Key_Tab);
  keys_.type("click wrench, spare");
  keys_.press(Qt::Key_X, Qt::AltModifier);  // Maximum
  keys_.type("25");
  keys_.press(Qt::Key_Return);
  const Result<Tool> tool = open().tool("W90");
  ASSERT_TRUE(tool);
  EXPECT_EQ(tool->description, "click wrench, spare");
  EXPECT_EQ(tool->maximum, 25);
  ASSERT_TRUE(wait([this] { return place_->model().rowOf("W90") >= 0; }));
}

TEST_F(CabinetTest, saysWhichToolsAreAlikeByKeyboard) {
  const auto alike = [this] {
    for (const QLabel* label : place_->findChildren<QLabel*>()) {
      if (const QString& text = label->text(); label->isVisible() && text.contains("\nalike"))
        return text.section('\n', -1);
    }
    return QString();
  };
  keys_.type("W11");
  EXPECT_EQ(alike(), "alike by maker, kind and maximum");
  keys_.press(Qt::Key_L, Qt::AltModifier);
  keys_.type("wheel wrenches");
  keys_.press(Qt::Key_Return);
  EXPECT_EQ(toolGroups(open()).value().at("W11"), "wheel wrenches");
  EXPECT_EQ(alike(), QStringLiteral("alike: “wheel wrenches”, no other tool yet"));
  ASSERT_TRUE(wait([this] { return !place_->model().working(); }));
  // A name that is there is completed, and chosen with the arrows.
  place_->arrive();
  keys_.press(Qt::Key_A, Qt::ControlModifier);
  keys_.type("W14");
  keys_.press(Qt::Key_L, Qt::AltModifier);
  keys_.type("whe");
  keys_.press(Qt::Key_Return);
  EXPECT_EQ(toolGroups(open()).value().at("W14"), "wheel wrenches");
  EXPECT_EQ(alike(), QStringLiteral("alike: “wheel wrenches”, with W11"));
  ASSERT_TRUE(wait([this] { return !place_->model().working(); }));
  keys_.press(Qt::Key_L, Qt::AltModifier);
  auto* automatic = labelled<QPushButton>(*place_, "As maker, kind and maximum say");
  ASSERT_TRUE(automatic && automatic->isEnabled());
  QTest::mouseClick(automatic, Qt::LeftButton);
  EXPECT_EQ(toolGroups(open())->count("W14"), 0u);
  EXPECT_EQ(alike(), "alike by maker, kind and maximum");
}

TEST_F(CabinetTest, aGroupWithoutANameIsRefusedInALineAndEscapeLeavesIt) {
  keys_.type("W11");
  keys_.press(Qt::Key_L, Qt::AltModifier);
  keys_.press(Qt::Key_Return);
  EXPECT_EQ(place_->findChild<MessageLine*>()->tone(), Tone::Bad);
  EXPECT_TRUE(toolGroups(open())->empty());
  keys_.type("wheels");
  keys_.press(Qt::Key_Escape);
  EXPECT_TRUE(labelled<QPushButton>(*place_, QStringLiteral("Alike…")));
  EXPECT_TRUE(toolGroups(open())->empty());
}

TEST_F(CabinetTest, neverScrollsSideways) {
  EXPECT_LE(table_->horizontalHeader()->length(), table_->viewport()->width());
}

}  // namespace
}  // namespace steadyturn
