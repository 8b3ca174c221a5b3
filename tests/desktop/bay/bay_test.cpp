#include <QCheckBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <QTableView>

#include "bay_place.h"
#include "bay_words.h"
#include "demo_shop.h"
#include "keys.h"
#include "message_line.h"
#include "text.h"
#include "torque_display.h"

namespace steadyturn {
namespace {

Fastener plasticHousing() {
  Fastener fastener;
  fastener.id = "F1";
  fastener.component = "oil filter housing cover";
  fastener.partMaterial = "plastic";
  fastener.target = 25;
  return fastener;
}

TEST(BayWords, warnAboutPlasticWithAndWithoutALimit) {
  Fastener fastener = plasticHousing();
  ASSERT_TRUE(plasticWords(fastener));
  EXPECT_TRUE(plasticWords(fastener)->text.contains("NO LIMIT ON RECORD"));
  EXPECT_EQ(plasticWords(fastener)->tone, Tone::Bad);
  fastener.partLimit = 30;
  EXPECT_TRUE(plasticWords(fastener)->text.contains(QStringLiteral("limit 30 N·m")));
  fastener.partMaterial = "aluminium";
  EXPECT_FALSE(plasticWords(fastener));
}

TEST(BayWords, giveTheTargetInTwoUnitsTheStatedOneFirst) {
  Fastener fastener = plasticHousing();
  // 1 lbf·ft = 1.355 817 948 N·m (NIST SP 811): 25 N·m = 18.439 lbf·ft, 20 lbf·ft = 27.116 N·m.
  EXPECT_EQ(targetWords(fastener).first, QStringLiteral("25 N·m"));
  EXPECT_EQ(targetWords(fastener).second, QStringLiteral("18.4 lbf·ft"));
  fastener.unit = Unit::PoundForceFoot;
  fastener.target = 20;
  EXPECT_EQ(targetWords(fastener).first, QStringLiteral("20 lbf·ft"));
  EXPECT_EQ(targetWords(fastener).second, QStringLiteral("27.1 N·m"));
}

TEST(BayWords, sayWhenAWindowIsAssumed) {
  EXPECT_TRUE(windowWords(plasticHousing()).contains(QStringLiteral("±10 %")));
}

TEST(TorqueDisplay, isReadableFromAMetre) {
  EXPECT_GE(TorqueDisplay::firstPixels, 48);
  EXPECT_GE(TorqueDisplay::secondPixels, 48);
  TorqueDisplay display;
  display.display(QStringLiteral("25 N·m"), QStringLiteral("18.4 lbf·ft"));
  EXPECT_GE(display.sizeHint().height(), 48);
}

class BayTest : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    shop_ = std::make_unique<OpenShop>(open());
    bay_ = std::make_unique<BayPlace>(*shop_);
    bay_->resize(1160, 760);
    present(*bay_);
    bay_->arrive();
  }
  void find(const QString& words, const std::string& id) {
    keys_.type(words);
    ASSERT_TRUE(wait(
        [&] { return bay_->model().fastener() && bay_->model().fastener()->id == id && !bay_->model().working(); }));
  }
  bool says(const QString& text) const {
    for (const QLabel* label : bay_->findChildren<QLabel*>()) {
      if (label->isVisible() && label->text().contains(text)) return true;
    }
    return false;
  }
  std::unique_ptr<OpenShop> shop_;
  std::unique_ptr<BayPlace> bay_;
  Keys keys_;
};

TEST_F(BayTest, findsAsOneTypesAndRanksAsTheShopDoes) {
  find("MB-02", "MB-02");
  const Shop shop = open();
  const auto choice = shop.choose("MB-02", shop.today());
  ASSERT_TRUE(choice);
  ASSERT_EQ(bay_->model().options().rowCount(), static_cast<int>(choice->choice.options.size()));
  ASSERT_GT(bay_->model().options().rowCount(), 0);
  for (int row = 0; row < bay_->model().options().rowCount(); ++row) {
    const Option& shown = *bay_->model().options().at(row);
    const Option& wanted = choice->choice.options[static_cast<std::size_t>(row)];
    EXPECT_EQ(shown.tool, wanted.tool);
    EXPECT_EQ(shown.setting, wanted.setting);
    EXPECT_EQ(shown.delivery.probabilityWithin, wanted.delivery.probabilityWithin);
  }
  EXPECT_EQ(bay_->model().refused().rowCount(), static_cast<int>(choice->choice.refused.size()));
  EXPECT_TRUE(says("PLASTIC"));
  EXPECT_TRUE(says("The vehicle maker's service data come first"));
}

TEST_F(BayTest, plasticWithoutALimitIsShouted) {
  find("MB-07", "MB-07");
  EXPECT_TRUE(says("NO LIMIT ON RECORD"));
}

TEST_F(BayTest, anAdapterChangesTheSettings) {
  find("MB-02", "MB-02");
  const double before = bay_->model().options().at(0)->setting.value;
  named<QLineEdit>(*bay_, "Adapter: wrench length, mm")->setFocus();
  keys_.type("400");
  keys_.press(Qt::Key_Tab);
  keys_.type("50");
  ASSERT_TRUE(wait([this] { return !bay_->model().working(); }));
  // In line, L 400, E 50: the fastener gets 1.125 times what the wrench shows (domain: 100 N·m from 88.89 N·m).
  EXPECT_TRUE(says(QStringLiteral("× 1.125")));
  const Shop shop = open();
  const auto choice = shop.choose("MB-02", shop.today(), Adapter{400, 50, 0});
  ASSERT_TRUE(choice);
  ASSERT_FALSE(choice->choice.options.empty());
  EXPECT_EQ(bay_->model().options().at(0)->setting, choice->choice.options[0].setting);
  EXPECT_LT(bay_->model().options().at(0)->setting.value, before);
}

TEST_F(BayTest, recordsATighteningByKeyboard) {
  find("MB-02", "MB-02");
  const std::string tool = bay_->model().options().at(0)->tool;
  keys_.press(Qt::Key_Return);  // to the list
  keys_.press(Qt::Key_Return);  // to the wrenches
  keys_.press(Qt::Key_Return);  // to the job
  keys_.type("J-9001");
  keys_.press(Qt::Key_Tab);
  keys_.type("bus 12");
  keys_.press(Qt::Key_E, Qt::AltModifier);  // seat checked
  keys_.press(Qt::Key_R, Qt::AltModifier);
  const auto stored = open().tighteningsOfJob("J-9001");
  ASSERT_TRUE(stored);
  ASSERT_EQ(stored->size(), 1u) << toText(bay_->findChildren<MessageLine*>().at(0)->text());
  EXPECT_EQ(stored->front().fastener, "MB-02");
  EXPECT_EQ(stored->front().tool, tool);
  EXPECT_EQ(stored->front().vehicle, "bus 12");
  EXPECT_EQ(stored->front().seatChecked, true);
}

TEST_F(BayTest, whatIsNotThereIsSaid) {
  keys_.type("qqqqq");
  ASSERT_TRUE(wait([this] { return says("Nothing found"); }));
}

}  // namespace
}  // namespace steadyturn
