// Starts the real program on a virtual display and types a check into it, as a person would.
#include <QElapsedTimer>
#include <QProcess>
#include <QTemporaryDir>

#include "demo_shop.h"
#include "keys.h"
#include "text.h"

namespace steadyturn {
namespace {

class StartedProgram : public DemoShop {
 protected:
  void SetUp() override {
    DemoShop::SetUp();
    // Xvfb picks a free display and tells its number.
    display_.setProgram("Xvfb");
    display_.setArguments({"-displayfd", "1", "-screen", "0", "1280x800x24", "-nolisten", "tcp", "-noreset"});
    display_.start();
    ASSERT_TRUE(display_.waitForStarted()) << "needs the Debian packages xvfb and xdotool";
    ASSERT_TRUE(display_.waitForReadyRead(20000));
    environment_ = QProcessEnvironment::systemEnvironment();
    environment_.insert("DISPLAY", ":" + QString::fromLatin1(display_.readLine()).trimmed());
    environment_.insert("QT_QPA_PLATFORM", "xcb");
    environment_.insert("XDG_CONFIG_HOME", file("config"));
    environment_.insert("XDG_DATA_HOME", file("data"));
    environment_.insert("XDG_RUNTIME_DIR", file(""));
    program_.setProcessEnvironment(environment_);
    program_.setProcessChannelMode(QProcess::MergedChannels);
  }
  void TearDown() override {
    for (QProcess* process : {&program_, &display_}) {
      process->terminate();
      if (!process->waitForFinished(5000)) process->kill();
      process->waitForFinished(2000);
    }
  }
  QString xdotool(const QStringList& arguments) {
    QProcess tool;
    tool.setProcessEnvironment(environment_);
    tool.start("xdotool", arguments);
    if (!tool.waitForFinished(20000)) return {};
    return QString::fromUtf8(tool.readAllStandardOutput()).trimmed();
  }
  void start(const QStringList& arguments) {
    // The display tells its number before it takes callers.
    ASSERT_TRUE(wait([this] { return !xdotool({"getdisplaygeometry"}).isEmpty(); }))
        << display_.readAll().toStdString();
    program_.start(STEADYTURN_PROGRAM, arguments);
    ASSERT_TRUE(program_.waitForStarted());
    ASSERT_TRUE(wait([this] {
      window_ = xdotool({"search", "--onlyvisible", "--name", "Steadyturn"}).split('\n').last();
      return !window_.isEmpty();
    })) << program_.readAll().toStdString();
    xdotool({"windowfocus", "--sync", window_});
  }
  void press(const QString& key) { xdotool({"key", key}); }
  // A line feed is the Enter key; xdotool would look for a key of that name, which a plain keyboard has not.
  void type(const QString& text) {
    const QStringList lines = text.split('\n');
    for (qsizetype i = 0; i < lines.size(); ++i) {
      if (i > 0) press("Return");
      if (!lines[i].isEmpty()) xdotool({"type", "--delay", "15", lines[i]});
    }
  }
  QProcess display_, program_;
  QProcessEnvironment environment_;
  QString window_;
};

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
