// Starts the real program on a virtual display and types a check into it, as a person would.
#include "real_program.h"
#include "text.h"

namespace steadyturn {
namespace {

using StartedProgram = RealProgram;

TEST_F(StartedProgram, recordsACheckThatIsThenInTheDatabase) {
  const auto before = open().newestChecks(1)->front().id;
  start({shopFile()});
  press("ctrl+1");
  type("W06\n");
  type("R2\n");
  type("10.0\n10,1\n9.9\n10.0\n10.1\n36.1\n36\n35.9\n36.2\n36\n60.2\n60\n59.9\n60.1\n60\n");
  press("ctrl+s");
  ASSERT_TRUE(wait([&] { return open().newestChecks(1)->front().id > before; })) << program_.readAll().toStdString();
  const Check stored = open().newestChecks(1)->front();
  EXPECT_EQ(stored.tool, "W06");
  EXPECT_EQ(stored.reference, "R2");
  EXPECT_EQ(stored.verdict, Verdict::Pass);
  ASSERT_EQ(stored.points.size(), 3u);
  EXPECT_EQ(stored.points[0].readings, (std::vector<std::string>{"10.0", "10.1", "9.9", "10.0", "10.1"}));
}

// The scanner's keys come through the window system: as fast as it types, Enter at the end.
TEST_F(StartedProgram, takesUpAToolWhoseLabelIsScanned) {
  const auto before = open().newestChecks(1)->front().id;
  start({shopFile()});
  press("ctrl+1");
  QTest::qWait(lookUp);
  // And the person goes on typing without looking up.
  const auto typed = [](const QString& text) {
    return QStringList{"type", "--args", "1", "--delay", "4", text, "key", "Return"};
  };
  xdotool(typed("STURN:T:W06") + typed("R2") + typed("10.0") + typed("10.1"));
  press("ctrl+s");
  ASSERT_TRUE(wait([&] { return open().newestChecks(1)->front().id > before; })) << program_.readAll().toStdString();
  const Check stored = open().newestChecks(1)->front();
  EXPECT_EQ(stored.tool, "W06");
  EXPECT_EQ(stored.points.front().readings, (std::vector<std::string>{"10.0", "10.1"}));
}

TEST_F(StartedProgram, opensWhatWasWorkedInAfterAnAudit) {
  ASSERT_TRUE(Shop::create(toText(file("mine.db")), "Mine"));
  ASSERT_TRUE(Shop::create(toText(file("audited.db")), "Audited"));
  const auto title = [this](const QStringList& arguments) {
    start(arguments);
    wait([this] { return xdotool({"getwindowname", window_}).contains(QStringLiteral(" – ")); });
    const QString name = xdotool({"getwindowname", window_});
    kill();
    return name;
  };
  EXPECT_TRUE(title({file("mine.db")}).startsWith("Mine "));
  EXPECT_TRUE(title({"--audit", file("audited.db")}).startsWith("Audited (read only)"));
  EXPECT_TRUE(title({}).startsWith("Mine "));
}

TEST_F(StartedProgram, saysWhatItIsWithoutADisplayedWindow) {
  environment_.insert("QT_QPA_PLATFORM", "offscreen");
  program_.setProcessEnvironment(environment_);
  program_.start(STEADYTURN_PROGRAM, {"--version"});
  ASSERT_TRUE(program_.waitForFinished(20000));
  EXPECT_EQ(program_.exitCode(), 0);
  EXPECT_TRUE(program_.readAll().startsWith("steadyturn "));
  program_.start(STEADYTURN_PROGRAM, {"--help"});
  ASSERT_TRUE(program_.waitForFinished(20000));
  EXPECT_TRUE(program_.readAll().contains("SHOP"));
  program_.start(STEADYTURN_PROGRAM, {"--theme", "mauve"});
  ASSERT_TRUE(program_.waitForFinished(20000));
  EXPECT_EQ(program_.exitCode(), 64);
}

}  // namespace
}  // namespace steadyturn
