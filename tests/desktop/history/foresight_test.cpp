// The page about the checking interval: asked by keys, answered off the window's thread, written to files.
#include <QComboBox>
#include <QSpinBox>
#include <algorithm>

#include "chart_pane.h"
#include "foresight_page.h"
#include "history_place.h"
#include "one_place.h"
#include "text.h"

namespace steadyturn {
namespace {

class ForesightTest : public OnePlace<HistoryPlace> {
 protected:
  ForesightModel& model() { return place_->foresight().model(); }
  void openFor(const QString& tool) {
    place_->open(tool);
    ASSERT_TRUE(wait([&] { return place_->model().story().has_value() && !place_->model().working(); }));
    keys_.press(Qt::Key_K, Qt::AltModifier);
    ASSERT_TRUE(wait([&] { return model().found().has_value() && !model().working(); }));
  }
  QByteArray written(const QString& name) {
    typeInto("File for the chart or the report", file(name));
    return content(file(name));
  }
};

TEST_F(ForesightTest, showsTheFiguresOfTheShopsOwnAnswer) {
  openFor("W08");
  const Shop shop = open();
  const auto past = backtestShop(shop, "W08", shop.today());
  const auto whatIf = analyseInterval(shop, {.scope = "W08", .asOf = shop.today()});
  ASSERT_TRUE(past && whatIf);
  EXPECT_EQ(model().found()->scores.fleet.forecasts(), past->all.fleet.forecasts());
  EXPECT_EQ(model().found()->whatIf.keepsTarget, whatIf->recommendedDays);
  EXPECT_EQ(model().found()->methods.size(), 3U);
  // The curve goes through the interval that keeps the target, and there the risk is the target's.
  const auto& risks = model().found()->whatIf.risks;
  const auto kept = std::ranges::find(risks, whatIf->recommendedDays.value(), &IntervalRisk::intervalDays);
  ASSERT_NE(kept, risks.end());
  EXPECT_LE(kept->risk, 0.05);
  EXPECT_TRUE(std::ranges::is_sorted(risks, {}, &IntervalRisk::intervalDays));
  for (const char* name :
       {"Chart of what the intervals of earlier predictions held", "Chart of the risk of a checking interval",
        "Chart of the checks a year that an interval takes"}) {
    auto* pane = named<ChartPane>(*place_, name);
    ASSERT_TRUE(pane) << name;
    EXPECT_FALSE(pane->chart()->series().isEmpty()) << name;
  }
}

TEST_F(ForesightTest, aHigherTargetAsksForAShorterInterval) {
  openFor("W08");
  const int at95 = model().found()->whatIf.keepsTarget.value();
  auto* target = named<QSpinBox>(*place_, "Share to be inside at the end of the interval");
  target->setFocus();
  target->selectAll();
  keys_.type("99");
  keys_.press(Qt::Key_Return);
  ASSERT_TRUE(wait([&] { return !model().working() && model().found()->whatIf.target > 0.98; }));
  EXPECT_LT(model().found()->whatIf.keepsTarget.value_or(0), at95);
}

TEST_F(ForesightTest, theWholeShopIsOneOfTheScopes) {
  openFor("W08");
  auto* scope = named<QComboBox>(*place_, "Whose predictions and interval");
  EXPECT_EQ(scope->count(), 3);
  scope->setFocus();
  keys_.press(Qt::Key_End);
  ASSERT_TRUE(wait([&] { return !model().working() && model().found()->whatIf.scope == "shop"; }));
  EXPECT_GT(model().found()->tools, 5U);
  EXPECT_TRUE(model().found()->methods.empty());
}

TEST_F(ForesightTest, writesAChartOrTheWholeReport) {
  openFor("W08");
  EXPECT_TRUE(written("held.svg").contains("<svg"));
  EXPECT_TRUE(written("risk.png").startsWith("\x89PNG"));
  EXPECT_TRUE(written("interval.pdf").startsWith("%PDF-"));
  const auto table = written("interval.csv");
  EXPECT_TRUE(table.contains("checks a year"));
  EXPECT_TRUE(table.contains("mean log score"));
}

}  // namespace
}  // namespace steadyturn
