// Papers about the tools, by keys: the due list, due days as a calendar, labels.
#include <QComboBox>
#include <QFile>
#include <QTableView>

#include "cabinet_place.h"
#include "message_line.h"
#include "one_place.h"
#include "papers_panel.h"
#include "shop_signing.h"
#include "text.h"

namespace steadyturn {
namespace {

class PapersTest : public OnePlace<CabinetPlace> {
 protected:
  // Opens the panel and walks down to the paper.
  void choose(int downs) {
    keys_.press(Qt::Key_D, Qt::AltModifier);
    ASSERT_TRUE(wait([this] { return panel().isVisible(); }));
    for (int i = 0; i < downs; ++i) keys_.press(Qt::Key_Down);
  }
  void writeTo(const QString& name) {
    typeInto("File for the paper", file(name));
    ASSERT_TRUE(wait([this] { return panel().findChild<MessageLine*>()->isVisible(); }));
  }
  PapersPanel& panel() const { return *place_->findChild<PapersPanel*>(); }
  QString said() const { return panel().findChild<MessageLine*>()->text(); }
};

TEST_F(PapersTest, theDueListIsWrittenForTheBench) {
  choose(0);
  writeTo("due.csv");
  EXPECT_TRUE(said().contains("due.csv")) << toText(said());
  const QByteArray text = content(file("due.csv"));
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
  const QByteArray text = content(file("due.ics"));
  EXPECT_TRUE(text.startsWith("BEGIN:VCALENDAR\r\n"));  // RFC 5545, 3.4
  EXPECT_TRUE(text.contains("W15"));
}

TEST_F(PapersTest, labelsAreWrittenForAllToolsAndForOne) {
  choose(2);
  writeTo("all.pdf");
  EXPECT_TRUE(content(file("all.pdf")).startsWith("%PDF-")) << toText(said());
  keys_.press(Qt::Key_Escape);
  choose(1);  // the one beneath
  writeTo("one.pdf");
  EXPECT_TRUE(content(file("one.pdf")).startsWith("%PDF-")) << toText(said());
  EXPECT_LT(content(file("one.pdf")).size(), content(file("all.pdf")).size());
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
  EXPECT_EQ(content(file("due.pdf")), "mine");
  EXPECT_TRUE(said().contains("exists")) << toText(said());
}

}  // namespace
}  // namespace steadyturn
