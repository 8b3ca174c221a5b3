#include <QCheckBox>
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QListView>
#include <QPushButton>
#include <QTableView>

#include "adapter_sketch.h"
#include "bay_place.h"
#include "bay_words.h"
#include "demo_shop.h"
#include "joint_chart.h"
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
  fastener.limitBasis = "half the stripping torque";
  EXPECT_TRUE(plasticWords(fastener)->text.contains(QStringLiteral("not the maker's value")));
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
  EXPECT_TRUE(bay_->findChild<AdapterSketch*>()->isVisible());
  EXPECT_TRUE(bay_->findChild<AdapterSketch*>()->accessibleName().contains("400 mm"));
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

TEST_F(BayTest, aScannersEnterComesBeforeTheSearchIsThrough) {
  keys_.type("MB-02");
  keys_.press(Qt::Key_Return);
  ASSERT_TRUE(wait([&] { return bay_->model().fastener() && bay_->model().fastener()->id == "MB-02"; }));
  EXPECT_TRUE(named<QListView>(*bay_, "Fasteners found")->hasFocus());
}

TEST_F(BayTest, aSecondPersonReleasesAtTheBay) {
  find("GR-10", "GR-10");
  EXPECT_TRUE(says("NOT RELEASED"));
  EXPECT_TRUE(says("waits for the approval of a second person"));
  named<QLineEdit>(*bay_, "By")->setFocus();
  keys_.type("depot office");
  keys_.press(Qt::Key_K, Qt::AltModifier);
  EXPECT_FALSE(open().fastener("GR-10")->released());  // who entered it
  named<QLineEdit>(*bay_, "By")->selectAll();
  named<QLineEdit>(*bay_, "By")->setFocus();
  keys_.type("R. Okoye");
  keys_.press(Qt::Key_K, Qt::AltModifier);
  EXPECT_EQ(open().fastener("GR-10")->approvedBy, "R. Okoye");
  ASSERT_TRUE(wait([this] { return !bay_->model().working(); }));
  EXPECT_FALSE(says("NOT RELEASED"));
}

TEST_F(BayTest, asksAboutTheUnitBeforeASpecificationIsSaved) {
  keys_.press(Qt::Key_N, Qt::AltModifier);  // add a fastener
  const auto fill = [&](const char* name, const QString& text) {
    named<QLineEdit>(*bay_, name)->setFocus();
    keys_.type(text);
  };
  fill("Mark", "NEW-1");
  fill("Component", "bracket bolt");
  fill("Thread", "M8");
  fill("Property class", "8.8");
  fill("Part material", "steel");
  fill("Target torque", "25");
  EXPECT_TRUE(says("could sensibly take"));
  EXPECT_FALSE(says("would fit"));
  auto* unit = named<QComboBox>(*bay_, "Unit of all torques");
  unit->setFocus();
  while (unit->currentText() != QString::fromUtf8("lbf·in")) keys_.press(Qt::Key_Down);
  EXPECT_TRUE(says(QStringLiteral("25 lbf·in on M8? 25 N·m would fit.")));
  keys_.press(Qt::Key_E, Qt::AltModifier);
  EXPECT_FALSE(open().fastener("NEW-1"));
  EXPECT_TRUE(says("Look at the unit once more"));
  unit->setFocus();
  while (unit->currentText() != QString::fromUtf8("N·m")) keys_.press(Qt::Key_Up);
  keys_.press(Qt::Key_E, Qt::AltModifier);
  const auto saved = open().fastener("NEW-1");
  ASSERT_TRUE(saved);
  EXPECT_EQ(saved->target, 25);
  EXPECT_EQ(bay_->model().fastener()->id, "NEW-1");
}

TEST_F(BayTest, aChangedSpecificationIsARevisionWithAReason) {
  find("MB-02", "MB-02");
  keys_.press(Qt::Key_G, Qt::AltModifier);
  named<QLineEdit>(*bay_, "Lubrication")->selectAll();
  named<QLineEdit>(*bay_, "Lubrication")->setFocus();
  keys_.type("grease the ring");
  keys_.press(Qt::Key_Return);
  EXPECT_EQ(open().fastener("MB-02")->number, 1);  // no reason
  named<QLineEdit>(*bay_, "Why it changes")->setFocus();
  keys_.type("bulletin 4");
  keys_.press(Qt::Key_Return);
  EXPECT_EQ(open().fastener("MB-02")->number, 2);
  EXPECT_EQ(open().fastener("MB-02")->lubrication, "grease the ring");
  EXPECT_TRUE(says("NOT RELEASED"));
}

TEST_F(BayTest, aSpecificationLeftHalfTypedIsThereAgain) {
  find("MB-02", "MB-02");
  keys_.press(Qt::Key_G, Qt::AltModifier);
  named<QLineEdit>(*bay_, "Lubrication")->selectAll();
  named<QLineEdit>(*bay_, "Lubrication")->setFocus();
  keys_.type("grease the ring");
  bay_->arrive();  // something else is looked up
  find("MB-07", "MB-07");
  keys_.press(Qt::Key_G, Qt::AltModifier);
  EXPECT_EQ(named<QLineEdit>(*bay_, "Lubrication")->text(), "clean and dry");
  EXPECT_FALSE(says("As you left it"));
  named<QLineEdit>(*bay_, "Torque of the trial")->setFocus();
  keys_.type("14");
  keys_.press(Qt::Key_Escape);
  keys_.press(Qt::Key_N, Qt::AltModifier);
  EXPECT_FALSE(says("As you left it"));
  EXPECT_EQ(named<QLineEdit>(*bay_, "Lubrication")->text(), "");
  keys_.press(Qt::Key_Escape);
  keys_.press(Qt::Key_G, Qt::AltModifier);
  EXPECT_TRUE(says("As you left it"));
  EXPECT_EQ(named<QLineEdit>(*bay_, "Torque of the trial")->text(), "14");
  bay_->arrive();
  find("MB-02", "MB-02");
  keys_.press(Qt::Key_G, Qt::AltModifier);
  EXPECT_TRUE(says("As you left it"));
  EXPECT_EQ(named<QLineEdit>(*bay_, "Lubrication")->text(), "grease the ring");
  keys_.press(Qt::Key_R, Qt::AltModifier);  // start anew
  ASSERT_TRUE(wait([this] { return !says("As you left it"); }));
  EXPECT_EQ(named<QLineEdit>(*bay_, "Lubrication")->text().toStdString(), open().fastener("MB-02")->lubrication);
  keys_.press(Qt::Key_Escape);
  keys_.press(Qt::Key_G, Qt::AltModifier);
  EXPECT_FALSE(says("As you left it"));
}

TEST_F(BayTest, whatWasTypedBeforeAnotherRevisionSaysSo) {
  find("MB-02", "MB-02");
  keys_.press(Qt::Key_G, Qt::AltModifier);
  named<QLineEdit>(*bay_, "Why it changes")->setFocus();
  keys_.type("bulletin 4");
  keys_.press(Qt::Key_Escape);
  Fastener revised = *open().fastener("MB-02");
  revised.lubrication = "grease";
  ASSERT_TRUE(open().reviseFastener(revised, "somebody was faster"));
  bay_->model().chooseMark("MB-02");
  keys_.press(Qt::Key_G, Qt::AltModifier);
  EXPECT_TRUE(says("Another revision has come since"));
  keys_.press(Qt::Key_Escape);
  keys_.press(Qt::Key_G, Qt::AltModifier);
  EXPECT_TRUE(says("Another revision has come since")) << "as long as it is not started anew";
  EXPECT_EQ(named<QLineEdit>(*bay_, "Why it changes")->text(), "bulletin 4");
}

TEST_F(BayTest, aJobLeftHalfTypedIsThereAgain) {
  keys_.press(Qt::Key_P, Qt::AltModifier);
  keys_.type("J-71");
  keys_.press(Qt::Key_Tab);
  keys_.type("minibus 2");
  auto* service = named<QComboBox>(*bay_, "List of the service");
  service->setFocus();
  while (service->currentText() != "oil and filter, minibus") keys_.press(Qt::Key_Down);
  keys_.press(Qt::Key_Escape);
  find("MB-02", "MB-02");
  keys_.press(Qt::Key_P, Qt::AltModifier);
  EXPECT_EQ(named<QLineEdit>(*bay_, "Job to open")->text(), "J-71");
  EXPECT_EQ(named<QLineEdit>(*bay_, "Vehicle of the job")->text(), "minibus 2");
  EXPECT_EQ(service->currentText(), "oil and filter, minibus");
  keys_.press(Qt::Key_T, Qt::AltModifier);
  ASSERT_TRUE(bay_->model().sheet());
  keys_.press(Qt::Key_P, Qt::AltModifier);
  EXPECT_EQ(named<QLineEdit>(*bay_, "Job to open")->text(), "");
  EXPECT_EQ(service->currentText(), "no list");
}

TEST_F(BayTest, worksDownAJobsSheet) {
  keys_.press(Qt::Key_P, Qt::AltModifier);  // open a job
  keys_.type("J-7");
  keys_.press(Qt::Key_Tab);
  keys_.type("panel van 3");
  auto* service = named<QComboBox>(*bay_, "List of the service");
  service->setFocus();
  while (service->currentText() != "oil and filter, panel van") keys_.press(Qt::Key_Down);
  keys_.press(Qt::Key_T, Qt::AltModifier);
  ASSERT_TRUE(bay_->model().sheet());
  JobLines& lines = bay_->model().jobLines();
  ASSERT_EQ(lines.rowCount(), 4);
  ASSERT_TRUE(wait([this] { return bay_->model().fastener() && !bay_->model().working(); }));
  EXPECT_EQ(bay_->model().fastener()->id, "VB-01");
  keys_.press(Qt::Key_A, Qt::AltModifier);  // seal renewed
  keys_.press(Qt::Key_E, Qt::AltModifier);  // seat seen
  keys_.press(Qt::Key_R, Qt::AltModifier);
  EXPECT_EQ(lines.data(lines.index(0), Qt::CheckStateRole).toInt(), Qt::Checked);
  EXPECT_EQ(bay_->model().fastener()->id, "VB-02");  // the next that lacks something
  const auto stored = open().tighteningsOfJob("J-7");
  ASSERT_TRUE(stored);
  ASSERT_EQ(stored->size(), 1u);
  EXPECT_EQ(stored->front().vehicle, "panel van 3");
  EXPECT_EQ(stored->front().sealRenewed, true);
  keys_.press(Qt::Key_B, Qt::AltModifier);  // close it
  EXPECT_TRUE(says("not tightened"));
  keys_.type("the rest tomorrow");
  keys_.press(Qt::Key_B, Qt::AltModifier);
  EXPECT_FALSE(bay_->model().sheet());
  EXPECT_EQ(open().jobSheet("J-7")->job.closed->note, "the rest tomorrow");
}

TEST_F(BayTest, stagesAreTickedInTheirOrder) {
  find("RL-04", "RL-04");  // in two rounds
  keys_.press(Qt::Key_1, Qt::AltModifier);
  named<QLineEdit>(*bay_, "Job")->setFocus();
  keys_.type("J-8");
  named<QLineEdit>(*bay_, "Vehicle")->setFocus();
  keys_.type("lorry 1");
  keys_.press(Qt::Key_R, Qt::AltModifier);
  const auto stored = open().tighteningsOfJob("J-8");
  ASSERT_EQ(stored->size(), 1u);
  EXPECT_EQ(stored->front().stagesDone, 1);
}

TEST_F(BayTest, showsWhatAThreadCouldTake) {
  find("VB-10", "VB-10");  // M12, 8.8, 60 N·m
  keys_.press(Qt::Key_U, Qt::AltModifier);
  // ISO 898-1: stress area 84.3 mm², proof load 48 900 N; VDI 2230 at friction 0.12: 43.0 kN, 84 N·m (from memory).
  EXPECT_TRUE(says("proof load (ISO 898-1) 48.9 kN"));
  const auto* chart = bay_->findChild<JointChart*>();
  EXPECT_TRUE(chart->isVisible());
  EXPECT_TRUE(chart->accessibleName().contains("at friction 0.08"));
  keys_.type("x");
  EXPECT_TRUE(says("M12x1.5") || says("accepted") || says("M39"));  // what threads there are
  keys_.press(Qt::Key_Escape);
  EXPECT_FALSE(chart->isVisible());
}

TEST_F(BayTest, whatIsNotThereIsSaid) {
  keys_.type("qqqqq");
  ASSERT_TRUE(wait([this] { return says("Nothing found"); }));
}

}  // namespace
}  // namespace steadyturn
