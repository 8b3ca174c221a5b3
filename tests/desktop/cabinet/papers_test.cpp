// Papers about the tools, by keys: the due list, due days as a calendar, labels.
#include <QComboBox>
#include <QFile>
#include <QLineEdit>
#include <QTableView>

#include "cabinet_place.h"
#include "demo_shop.h"
#include "keys.h"
#include "message_line.h"
#include "papers_panel.h"
#include "shop_signing.h"
#include "text.h"

namespace steadyturn {
namespace {

class PapersTest : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    shop_ = std::make_unique<OpenShop>(open());
    place_ = std::make_unique<CabinetPlace>(*shop_);
    place_->resize(1160, 760);
    present(*place_);
    ASSERT_TRUE(wait([this] { return !place_->model().working(); }));
    place_->arrive();
  }
  // Opens the panel and walks down to the paper.
  void choose(int downs) {
    keys_.press(Qt::Key_D, Qt::AltModifier);
    ASSERT_TRUE(wait([this] { return panel().isVisible(); }));
    for (int i = 0; i < downs; ++i) keys_.press(Qt::Key_Down);
  }
  void writeTo(const QString& name) {
    auto* line = named<QLineEdit>(*place_, "File for the paper");
    ASSERT_TRUE(line);
    line->setFocus();
    line->selectAll();
    keys_.type(file(name));
    keys_.press(Qt::Key_Return);
    ASSERT_TRUE(wait([this] { return panel().findChild<MessageLine*>()->isVisible(); }));
  }
  PapersPanel& panel() const { return *place_->findChild<PapersPanel*>(); }
  QString said() const { return panel().findChild<MessageLine*>()->text(); }
  QByteArray content(const QString& name) const {
    QFile in(file(name));
    return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
  }
  std::unique_ptr<OpenShop> shop_;
  std::unique_ptr<CabinetPlace> place_;
  Keys keys_;
};

TEST_F(PapersTest, theDueListIsWrittenForTheBench) {
  choose(0);
  writeTo("due.csv");
  EXPECT_TRUE(said().contains("due.csv")) << toText(said());
  const QByteArray text = content("due.csv");
  const auto issues = issuesOf(shop_->shop(), {text.constData(), static_cast<std::size_t>(text.size())});
  ASSERT_TRUE(issues);
  EXPECT_EQ(issues->size(), 1U) << "the ledger tells of the paper";
  EXPECT_TRUE(text.contains("W15"));   // overdue
  EXPECT_TRUE(text.contains("W21"));   // due within the month
  EXPECT_FALSE(text.contains("W16"));  // due next summer
}

TEST_F(PapersTest, dueDaysAreWrittenForACalendar) {
  choose(1);
  writeTo("due.ics");
  const QByteArray text = content("due.ics");
  EXPECT_TRUE(text.startsWith("BEGIN:VCALENDAR\r\n"));  // RFC 5545, 3.4
  EXPECT_TRUE(text.contains("W15"));
}

TEST_F(PapersTest, labelsAreWrittenForAllToolsAndForOne) {
  choose(2);
  writeTo("all.pdf");
  EXPECT_TRUE(content("all.pdf").startsWith("%PDF-")) << toText(said());
  keys_.press(Qt::Key_Escape);
  choose(1);  // the one beneath
  writeTo("one.pdf");
  EXPECT_TRUE(content("one.pdf").startsWith("%PDF-")) << toText(said());
  EXPECT_LT(content("one.pdf").size(), content("all.pdf").size());
}

TEST_F(PapersTest, aNameThatFitsNoPaperIsSaidAndNothingIsWritten) {
  choose(0);
  writeTo("due.txt");
  EXPECT_TRUE(said().contains(".pdf or .csv")) << toText(said());
  EXPECT_FALSE(QFile::exists(file("due.txt")));
}

TEST_F(PapersTest, aFileInTheWayIsNotReplacedUnasked) {
  QFile other(file("due.pdf"));
  ASSERT_TRUE(other.open(QIODevice::WriteOnly));
  other.write("mine");
  other.close();
  choose(0);
  writeTo("due.pdf");
  EXPECT_EQ(content("due.pdf"), "mine");
  EXPECT_TRUE(said().contains("exists")) << toText(said());
}

}  // namespace
}  // namespace steadyturn
