#include <QComboBox>
#include <QFile>
#include <QLineEdit>
#include <QPushButton>

#include "cabinet_place.h"
#include "demo_shop.h"
#include "keys.h"
#include "main_window.h"
#include "message_line.h"
#include "shop_room.h"
#include "text.h"
#include "transfer_panel.h"

namespace steadyturn {
namespace {

class TransferTest : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    window_.openShop(shopFile());
    present(window_);
    panel_ = window_.room()->findChild<TransferPanel*>();
    ASSERT_TRUE(panel_);
  }
  void put(const QString& name, const QByteArray& bytes) {
    QFile out(file(name));
    ASSERT_TRUE(out.open(QIODevice::WriteOnly));
    out.write(bytes);
  }
  QByteArray content(const QString& name) {
    QFile in(file(name));
    return in.open(QIODevice::ReadOnly) ? in.readAll() : QByteArray();
  }
  void go(PathLine::Direction direction, TableKind kind, const QString& name) {
    window_.room()->transfer(direction, kind);
    auto* line = qobject_cast<QLineEdit*>(QApplication::focusWidget());
    ASSERT_TRUE(line);
    line->selectAll();
    keys_.type(file(name));
    keys_.press(Qt::Key_Return);
    ASSERT_TRUE(wait([this] { return !panel_->working(); }));
  }
  QString said() const { return panel_->findChild<MessageLine*>()->text(); }
  MainWindow window_;
  TransferPanel* panel_ = nullptr;
  Keys keys_;
};

TEST_F(TransferTest, importsToolsAndTheCabinetShowsThem) {
  put("tools.csv",
      "tool,description,type,class,max,unit\nW80,spare wrench,II,A,50,N.m\nW81,spare wrench,II,A,60,N.m\n");
  go(PathLine::Direction::Read, TableKind::Tools, "tools.csv");
  EXPECT_TRUE(open().tool("W80")) << toText(said());
  EXPECT_TRUE(said().contains("2 rows")) << toText(said());
  ASSERT_TRUE(wait([this] { return window_.room()->cabinet().model().rowOf("W81") >= 0; }));
}

TEST_F(TransferTest, aBadRowIsNamedAndNothingIsTakenIn) {
  put("tools.csv", "tool,type,class,max,unit\nW80,II,A,50,N.m\nW81,II,A,6O,N.m\n");
  go(PathLine::Direction::Read, TableKind::Tools, "tools.csv");
  EXPECT_FALSE(open().tool("W80"));
  EXPECT_TRUE(said().contains("Line 3")) << toText(said());
  EXPECT_TRUE(said().contains("6O")) << toText(said());
}

TEST_F(TransferTest, exportsWhatItImportsAgain) {
  go(PathLine::Direction::Write, TableKind::Fasteners, "fasteners.csv");
  const QByteArray bytes = content("fasteners.csv");
  EXPECT_TRUE(bytes.contains("MB-02"));
  EXPECT_FALSE(QFile::exists(file("fasteners.csv.part")));
  window_.createShop(file("copy.db"));
  panel_ = window_.room()->findChild<TransferPanel*>();
  go(PathLine::Direction::Read, TableKind::Fasteners, "fasteners.csv");
  EXPECT_EQ(window_.room()->shop().shop().fasteners()->size(), open().fasteners()->size()) << toText(said());
}

TEST_F(TransferTest, aFileInTheWayIsNotReplacedUnasked) {
  put("tools.csv", "mine");
  go(PathLine::Direction::Write, TableKind::Tools, "tools.csv");
  EXPECT_EQ(content("tools.csv"), "mine");
  EXPECT_TRUE(said().contains("exists")) << toText(said());
}

TEST_F(TransferTest, aFileThatIsMissingIsSaid) {
  go(PathLine::Direction::Read, TableKind::Tools, "missing.csv");
  EXPECT_EQ(panel_->findChild<MessageLine*>()->tone(), Tone::Bad);
  EXPECT_TRUE(said().contains("missing.csv")) << toText(said());
}

}  // namespace
}  // namespace steadyturn
