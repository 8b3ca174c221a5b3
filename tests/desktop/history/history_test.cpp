#include <QCheckBox>
#include <QComboBox>
#include <QFile>
#include <QLabel>
#include <QLineEdit>
#include <QTableView>
#include <QWheelEvent>
#include <QtCharts/QChartView>

#include "chart_pane.h"
#include "history_place.h"
#include "message_line.h"
#include "one_place.h"
#include "path_line.h"
#include "recall_page.h"
#include "small_charts.h"
#include "text.h"

namespace steadyturn {
namespace {

class HistoryTest : public OnePlace<HistoryPlace> {
 protected:
  ChartPane& driftChart() { return *named<ChartPane>(*place_, "Chart of the tool's deviations over time"); }
  SmallCharts& small() { return *place_->findChild<SmallCharts*>(); }
  void pick(const QString& tool) {
    keys_.type(tool);
    keys_.press(Qt::Key_Return);
    ASSERT_TRUE(wait([&] { return place_->model().story().has_value() && !place_->model().working(); }));
  }
  MessageLine& message() { return *place_->findChild<MessageLine*>(); }
};

TEST_F(HistoryTest, opensAtTheSetPointThatDecides) {
  pick("W07");
  const Shop shop = open();
  const auto drift = shop.drift("W07", shop.today());
  ASSERT_TRUE(drift);
  EXPECT_EQ(place_->model().story()->data.target, drift->series[drift->worst].target);
  auto* target = named<QComboBox>(*place_, "Set-point");
  EXPECT_EQ(target->count(), static_cast<int>(drift->series.size()) + 1) << "and all of them side by side";
  EXPECT_EQ(place_->model().checks().rowCount(), static_cast<int>(drift->series[drift->worst].points.size()));
  EXPECT_FALSE(driftChart().chart()->series().isEmpty());
}

TEST_F(HistoryTest, aToolWithOneCheckIsDrawnByTheFleet) {
  pick("W22");
  const HistoryData& data = place_->model().story()->data;
  ASSERT_TRUE(isBorrowed(data));
  ASSERT_GE(data.forecast->path.size(), 2U);
  const Shop shop = open();
  const auto drift = shop.drift("W22", shop.today());
  const auto& outlook = drift->series[drift->worst].outlook;
  const auto today = std::ranges::find(data.forecast->path, shop.today(), &ForecastStep::date);
  ASSERT_NE(today, data.forecast->path.end());
  EXPECT_DOUBLE_EQ(today->deviationPercent, outlook.deviationPercent);
  EXPECT_DOUBLE_EQ(today->interval.high, outlook.interval.high);
  bool said = false;
  for (const QLabel* label : place_->findChildren<QLabel*>()) said = said || label->text().contains("borrowed from");
  EXPECT_TRUE(said) << "how much is borrowed stands on the page";
}

TEST_F(HistoryTest, newestCheckFirstWithItsStoredFigures) {
  pick("W07");
  const auto checks = open().checksOf("W07");
  const Check& newest = checks->back();
  EXPECT_EQ(place_->model().checks().checkAt(0), newest.id);
  EXPECT_EQ(place_->model().checks().index(0, ChecksTable::DateColumn).data().toString(), dateText(newest.date));
}

TEST_F(HistoryTest, anotherSetPointShowsItsOwnChecks) {
  pick("W07");
  auto* target = named<QComboBox>(*place_, "Set-point");
  target->setFocus();
  const QString before = target->currentText();
  keys_.press(target->currentIndex() == 0 ? Qt::Key_Down : Qt::Key_Up);
  ASSERT_TRUE(
      wait([&] { return !place_->model().working() && torqueText(place_->model().story()->data.target) != before; }));
  EXPECT_EQ(target->currentText(), torqueText(place_->model().story()->data.target));
}

TEST_F(HistoryTest, aToolWithoutAnyCheckSaysSo) {
  pick("W24");
  EXPECT_TRUE(place_->model().story()->targets.empty());
  EXPECT_EQ(place_->model().checks().rowCount(), 0);
}

TEST_F(HistoryTest, writesTheCertificateOfTheSelectedCheck) {
  pick("W07");
  const QString path = file("certificate.pdf");
  typeInto("File for the certificate of the selected check", path);
  ASSERT_TRUE(wait([&] { return QFile::exists(path); }));
  EXPECT_TRUE(content(path).startsWith("%PDF-"));
  EXPECT_TRUE(wait([&] { return message().text().contains("certificate.pdf"); }));
}

TEST_F(HistoryTest, writesTheChartAsSvgAndPng) {
  pick("W07");
  typeInto("File for the chart", file("chart.svg"));
  EXPECT_TRUE(content(file("chart.svg")).contains("<svg"));
  typeInto("File for the chart", file("chart.png"));
  EXPECT_TRUE(content(file("chart.png")).startsWith("\x89PNG"));
}

TEST_F(HistoryTest, refusesAnEndingItDoesNotKnowAndWritesNothing) {
  pick("W07");
  typeInto("File for the chart", file("chart.gif"));
  EXPECT_EQ(message().tone(), Tone::Bad);
  EXPECT_FALSE(QFile::exists(file("chart.gif")));
}

TEST_F(HistoryTest, asksInALineBeforeItReplacesAFile) {
  pick("W07");
  QFile there(file("chart.svg"));
  ASSERT_TRUE(there.open(QIODevice::WriteOnly));
  there.write("mine");
  there.close();
  typeInto("File for the chart", file("chart.svg"));
  EXPECT_EQ(content(file("chart.svg")), "mine");
  keys_.press(Qt::Key_R, Qt::AltModifier);
  ASSERT_TRUE(wait([&] { return content(file("chart.svg")).contains("<svg"); }));
}

TEST_F(HistoryTest, beginsWithEveryToolSideBySideWorstFirst) {
  const auto fleet = open().fleet(open().today());
  ASSERT_TRUE(fleet);
  ASSERT_EQ(small().stories().size(), fleet->size());
  EXPECT_TRUE(small().isVisible());
  for (std::size_t i = 1; i < fleet->size(); ++i) EXPECT_LE((*fleet)[i - 1].standing, (*fleet)[i].standing);
  small().setFocus();
  keys_.press(Qt::Key_Return);
  ASSERT_TRUE(wait([&] { return place_->model().story().has_value() && !place_->model().working(); }));
  EXPECT_EQ(place_->model().tool(), fleet->front().history.tool.id);
  keys_.press(Qt::Key_L, Qt::AltModifier);
  EXPECT_TRUE(wait([&] { return small().isVisible() && !place_->model().working(); }));
}

TEST_F(HistoryTest, allSetPointsOfAToolSideBySide) {
  pick("W07");
  auto* target = named<QComboBox>(*place_, "Set-point");
  target->setFocus();
  keys_.press(Qt::Key_End);
  ASSERT_TRUE(wait([&] { return place_->model().asked() == Asked::SetPoints && !place_->model().working(); }));
  EXPECT_EQ(small().stories().size(), place_->model().targets().size());
  small().setCurrentIndex(small().model()->index(1, 0));
  keys_.press(Qt::Key_Return);
  ASSERT_TRUE(wait([&] { return place_->model().asked() == Asked::Story && !place_->model().working(); }));
  EXPECT_EQ(place_->model().story()->data.target, place_->model().targets()[1]);
}

TEST_F(HistoryTest, theChartIsLookedIntoByKeysAndWheel) {
  pick("W07");
  driftChart().setFocus();
  EXPECT_TRUE(driftChart().wholeShown());
  const ChartWindow whole = wholeWindow(historyChart(place_->model().story()->data));
  keys_.press(Qt::Key_Plus);
  ASSERT_TRUE(driftChart().window());
  const auto seen = [&] { return driftChart().window()->across.high - driftChart().window()->across.low; };
  EXPECT_LT(seen(), whole.across.high - whole.across.low);
  const double low = driftChart().window()->across.low;
  keys_.press(Qt::Key_Right, Qt::ShiftModifier);
  EXPECT_GT(driftChart().window()->across.low, low);
  keys_.press(Qt::Key_Home);
  EXPECT_TRUE(driftChart().wholeShown());
  // The wheel keeps what lies under the pointer where it is.
  const QPointF left(driftChart().chart()->plotArea().left() + 2, driftChart().height() / 2.0);
  QWheelEvent turn(left, driftChart().mapToGlobal(left), {}, {0, 240}, Qt::NoButton, Qt::NoModifier,
                   Qt::NoScrollPhase, false);
  QCoreApplication::sendEvent(driftChart().viewport(), &turn);
  ASSERT_TRUE(driftChart().window());
  EXPECT_NEAR(driftChart().window()->across.low, whole.across.low, 0.02 * (whole.across.high - whole.across.low));
}

TEST_F(HistoryTest, arrowsGoFromMarkToMarkAndEnterTakesTheCheck) {
  pick("W07");
  driftChart().setFocus();
  // The table's row, the newest check, is ringed in the chart; from there back.
  ASSERT_TRUE(driftChart().pointed());
  const auto& points = place_->model().story()->data.points;
  EXPECT_EQ(driftChart().pointed()->record, points.back().check);
  keys_.press(Qt::Key_Left);
  ASSERT_TRUE(driftChart().pointed());
  const ChartPoint earlier = *driftChart().pointed();
  EXPECT_LT(earlier.date, points.back().date);
  EXPECT_EQ(driftChart().accessibleDescription(), fromText(earlier.note));
  keys_.press(Qt::Key_Return);
  auto* table = named<QTableView>(*place_, "Checks at this set-point");
  EXPECT_EQ(place_->model().checks().checkAt(table->currentIndex().row()), earlier.record);
  keys_.press(Qt::Key_Right);
  EXPECT_EQ(driftChart().pointed()->record, points.back().check);
}

TEST_F(HistoryTest, theControlChartStandsBesideAndCanBePutAway) {
  pick("W07");
  auto* control = named<ChartPane>(*place_, "Control chart of the checks as found");
  ASSERT_TRUE(control);
  EXPECT_TRUE(control->isVisible());
  labelled<QCheckBox>(*place_, "Control chart beside it")->click();
  EXPECT_FALSE(control->isVisible());
}

TEST_F(HistoryTest, aRecallIsDecidedAndClosedOnItsPage) {
  place_->openRecall("W11");
  ASSERT_TRUE(wait([&] { return !place_->model().working(); }));
  auto& page = *place_->findChild<RecallPage*>();
  ASSERT_TRUE(page.isVisible());
  ASSERT_TRUE(page.list());
  const auto doubtful = page.list()->tightenings.size();
  ASSERT_GT(doubtful, 0U);
  auto* reason = named<QLineEdit>(page, "Reason, or what was done");
  auto* by = named<QLineEdit>(page, "Decided by");
  by->setFocus();
  by->selectAll();
  keys_.type("Mara Lind");
  for (std::size_t i = 0; i < doubtful; ++i) {
    reason->setFocus();
    keys_.type("done again with another wrench");
    keys_.press(Qt::Key_Q, Qt::AltModifier);
    ASSERT_EQ(page.list()->undecided(), static_cast<int>(doubtful - i - 1)) << toText(message().text());
  }
  keys_.press(Qt::Key_C, Qt::AltModifier);
  ASSERT_TRUE(page.list()->closing);
  EXPECT_EQ(page.list()->closing->by, "Mara Lind");
  EXPECT_TRUE(open().recall("W11")->closing);
}

TEST_F(HistoryTest, acceptingWithoutAReasonIsRefusedInALine) {
  place_->openRecall("W11");
  ASSERT_TRUE(wait([&] { return !place_->model().working(); }));
  keys_.press(Qt::Key_I, Qt::AltModifier);
  EXPECT_EQ(message().tone(), Tone::Bad);
  EXPECT_FALSE(open().recall("W11")->tightenings.front().decision);
}

TEST_F(HistoryTest, writesTheHistoryAsAReport) {
  pick("W07");
  typeInto("File for the chart", file("history.pdf"));
  EXPECT_TRUE(content(file("history.pdf")).startsWith("%PDF-"));
  typeInto("File for the chart", file("history.csv"));
  EXPECT_TRUE(content(file("history.csv")).contains("mean deviation"));
}

TEST_F(HistoryTest, aFolderThatIsNotThereIsSaid) {
  pick("W07");
  typeInto("File for the certificate of the selected check", file("nowhere/certificate.pdf"));
  ASSERT_TRUE(wait([&] { return message().isVisible() && message().tone() == Tone::Bad; }));
  EXPECT_TRUE(message().text().contains("nowhere")) << toText(message().text());
}

}  // namespace
}  // namespace steadyturn
