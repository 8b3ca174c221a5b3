// The Bench by real key events only.
#include <QComboBox>
#include <QLabel>
#include <QLineEdit>
#include <QPushButton>
#include <cstdio>

#include "bench_place.h"
#include "demo_shop.h"
#include "keys.h"
#include "message_line.h"
#include "text.h"

namespace steadyturn {
namespace {

class BenchKeyboard : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    shop_ = std::make_unique<OpenShop>(open());
    bench_ = std::make_unique<BenchPlace>(*shop_);
    bench_->resize(1160, 760);
    present(*bench_);
    bench_->arrive();
  }
  MessageLine& message() { return *bench_->findChild<MessageLine*>("message"); }
  void takeUp(const QString& tool, const QString& reference) {
    keys_.type(tool);
    keys_.press(Qt::Key_Return);
    keys_.type(reference);
    keys_.press(Qt::Key_Return);
  }
  void typeReadings(const QStringList& readings) {
    for (const QString& reading : readings) {
      keys_.type(reading);
      keys_.press(Qt::Key_Return);
    }
  }
  std::unique_ptr<OpenShop> shop_;
  std::unique_ptr<BenchPlace> bench_;
  Keys keys_;
};

const QStringList passing{"10.0", "10.1", "9,9",  "10.0", "10,1", "36.1", "36.0", "35.9",
                          "36.2", "36.0", "60.2", "60.0", "59.9", "60.1", "60.0"};
const QStringList failing{"10.6", "10.7", "10.6", "10.7", "10.6", "36.1", "36.0", "35.9",
                          "36.2", "36.0", "60.2", "60.0", "59.9", "60.1", "60.0"};

TEST_F(BenchKeyboard, recordsACheckOfFifteenReadings) {
  takeUp("W06", "R2");
  typeReadings(passing);
  EXPECT_TRUE(qobject_cast<QPushButton*>(QApplication::focusWidget()));  // Enter in the last cell leads to Save
  keys_.press(Qt::Key_S, Qt::ControlModifier);

  const Check stored = open().newestChecks(1)->front();
  EXPECT_EQ(stored.tool, "W06");
  EXPECT_EQ(stored.reference, "R2");
  EXPECT_EQ(stored.phase, Phase::AsFound);
  EXPECT_EQ(stored.verdict, Verdict::Pass);
  ASSERT_EQ(stored.points.size(), 3u);
  EXPECT_EQ(stored.points[0].readings, (std::vector<std::string>{"10.0", "10.1", "9.9", "10.0", "10.1"}));
  EXPECT_EQ(message().tone(), Tone::Good);
  EXPECT_TRUE(message().text().contains(QString::number(stored.id))) << toText(message().text());
  EXPECT_TRUE(message().text().contains("due")) << toText(message().text());
  const int characters = static_cast<int>(passing.join("").size());
  std::printf("keystrokes for a check of 15 readings: %d, of them %d characters of readings\n", keys_.count(),
              characters);
  EXPECT_LE(keys_.count(), characters + 25);
}

TEST_F(BenchKeyboard, tabGoesFromReadingToReadingToSave) {
  takeUp("W06", "R2");
  for (int i = 0; i < 15; ++i) {
    keys_.type("10");
    keys_.press(Qt::Key_Tab);
  }
  EXPECT_EQ(bench_->model().draft().typedReadings(), 15);
  auto* save = qobject_cast<QPushButton*>(QApplication::focusWidget());
  ASSERT_TRUE(save);
  EXPECT_EQ(save->text(), "Save the check");
}

TEST_F(BenchKeyboard, downMovesToTheNextSetPoint) {
  takeUp("W06", "R2");
  keys_.press(Qt::Key_Down);
  keys_.type("36");
  EXPECT_EQ(bench_->model().draft().points[1].readings[0], "36");
}

TEST_F(BenchKeyboard, aFailedCheckLeadsToAsLeft) {
  takeUp("W06", "R2");
  typeReadings(failing);
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(open().newestChecks(1)->front().verdict, Verdict::Fail);
  EXPECT_EQ(message().tone(), Tone::Bad);
  keys_.press(Qt::Key_L, Qt::AltModifier);  // Adjusted: record as left
  ASSERT_TRUE(wait([this] { return bench_->model().draft().phase == Phase::AsLeft; }));
  EXPECT_EQ(named<QComboBox>(*bench_, "Phase")->currentText(), "as left");
  typeReadings(passing);
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  const Check left = open().newestChecks(1)->front();
  EXPECT_EQ(left.phase, Phase::AsLeft);
  EXPECT_EQ(left.verdict, Verdict::Pass);
}

TEST_F(BenchKeyboard, aFailedCheckCanPutTheToolOnHold) {
  takeUp("W06", "R2");
  typeReadings(failing);
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  keys_.press(Qt::Key_O, Qt::AltModifier);  // Put it on hold
  keys_.press(Qt::Key_Return);              // for the reason that is proposed
  ASSERT_TRUE(wait([this] { return open().tool("W06")->status == ToolStatus::Held; }));
  EXPECT_NE(open().tool("W06")->statusReason.find("failed as found"), std::string::npos);
}

TEST_F(BenchKeyboard, aWrongCellIsNamedAndGetsTheFocus) {
  takeUp("W06", "R2");
  typeReadings({"10.0", "1O.5", "10.1"});
  const auto before = open().newestChecks(1)->front().id;
  keys_.press(Qt::Key_S, Qt::ControlModifier);
  EXPECT_EQ(open().newestChecks(1)->front().id, before);
  EXPECT_TRUE(message().text().contains("1O.5")) << toText(message().text());
  auto* cell = qobject_cast<QLineEdit*>(QApplication::focusWidget());
  ASSERT_TRUE(cell);
  EXPECT_EQ(cell->text(), "1O.5");
}

TEST_F(BenchKeyboard, whatFitsNoToolIsSaid) {
  keys_.type("Q77");
  keys_.press(Qt::Key_Return);
  EXPECT_TRUE(message().text().contains("Q77")) << toText(message().text());
  EXPECT_FALSE(bench_->model().tool());
}

TEST_F(BenchKeyboard, verdictAndDeviationAreSeenWhileTyping) {
  takeUp("W06", "R2");
  keys_.type("10.6");  // no Enter yet: (10 − 10.6) / 10.6 = −5.66 %, by hand
  bool deviation = false;
  bool verdict = false;
  for (const QLabel* label : bench_->findChildren<QLabel*>()) {
    if (!label->isVisible()) continue;
    deviation = deviation || label->text().contains(QStringLiteral("−5.66 %"));
    verdict = verdict || label->text() == "fail";
  }
  EXPECT_TRUE(deviation);
  EXPECT_TRUE(verdict);
}

}  // namespace
}  // namespace steadyturn
