#include <QComboBox>
#include <QFile>
#include <QLineEdit>
#include <QTableView>
#include <QtCharts/QChartView>

#include "demo_shop.h"
#include "history_place.h"
#include "keys.h"
#include "message_line.h"
#include "path_line.h"
#include "text.h"

namespace steadyturn {
namespace {

class HistoryTest : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    shop_ = std::make_unique<OpenShop>(open());
    place_ = std::make_unique<HistoryPlace>(*shop_);
    place_->resize(1160, 760);
    present(*place_);
    place_->arrive();
  }
  void pick(const QString& tool) {
    keys_.type(tool);
    keys_.press(Qt::Key_Return);
    ASSERT_TRUE(wait([&] { return place_->model().story().has_value() && !place_->model().working(); }));
  }
  // Types a path into a line and presses Enter.
  void write(const QString& line, const QString& path) {
    auto* field = named<QLineEdit>(*place_, line);
    ASSERT_TRUE(field);
    field->setFocus();
    field->selectAll();
    keys_.type(path);
    keys_.press(Qt::Key_Return);
  }
  QByteArray content(const QString& path) const {
    QFile file(path);
    return file.open(QIODevice::ReadOnly) ? file.readAll() : QByteArray();
  }
  MessageLine& message() { return *place_->findChild<MessageLine*>(); }
  std::unique_ptr<OpenShop> shop_;
  std::unique_ptr<HistoryPlace> place_;
  Keys keys_;
};

TEST_F(HistoryTest, opensAtTheSetPointThatDecides) {
  pick("W07");
  const Shop shop = open();
  const auto drift = shop.drift("W07", shop.today());
  ASSERT_TRUE(drift);
  EXPECT_EQ(place_->model().story()->data.target, drift->series[drift->worst].target);
  auto* target = named<QComboBox>(*place_, "Set-point");
  EXPECT_EQ(target->count(), static_cast<int>(drift->series.size()));
  EXPECT_EQ(place_->model().checks().rowCount(), static_cast<int>(drift->series[drift->worst].points.size()));
  EXPECT_FALSE(place_->findChild<QChartView*>()->chart()->series().isEmpty());
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
  write("File for the certificate of the selected check", path);
  ASSERT_TRUE(wait([&] { return QFile::exists(path); }));
  EXPECT_TRUE(content(path).startsWith("%PDF-"));
  EXPECT_TRUE(wait([&] { return message().text().contains("certificate.pdf"); }));
}

TEST_F(HistoryTest, writesTheChartAsSvgAndPng) {
  pick("W07");
  write("File for the chart", file("chart.svg"));
  EXPECT_TRUE(content(file("chart.svg")).contains("<svg"));
  write("File for the chart", file("chart.png"));
  EXPECT_TRUE(content(file("chart.png")).startsWith("\x89PNG"));
}

TEST_F(HistoryTest, refusesAnEndingItDoesNotKnowAndWritesNothing) {
  pick("W07");
  write("File for the chart", file("chart.gif"));
  EXPECT_EQ(message().tone(), Tone::Bad);
  EXPECT_FALSE(QFile::exists(file("chart.gif")));
}

TEST_F(HistoryTest, asksInALineBeforeItReplacesAFile) {
  pick("W07");
  QFile there(file("chart.svg"));
  ASSERT_TRUE(there.open(QIODevice::WriteOnly));
  there.write("mine");
  there.close();
  write("File for the chart", file("chart.svg"));
  EXPECT_EQ(content(file("chart.svg")), "mine");
  keys_.press(Qt::Key_R, Qt::AltModifier);
  ASSERT_TRUE(wait([&] { return content(file("chart.svg")).contains("<svg"); }));
}

TEST_F(HistoryTest, aFolderThatIsNotThereIsSaid) {
  pick("W07");
  write("File for the certificate of the selected check", file("nowhere/certificate.pdf"));
  ASSERT_TRUE(wait([&] { return message().isVisible() && message().tone() == Tone::Bad; }));
  EXPECT_TRUE(message().text().contains("nowhere")) << toText(message().text());
}

}  // namespace
}  // namespace steadyturn
