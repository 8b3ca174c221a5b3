#include "real_program.h"

namespace steadyturn {

void RealProgram::SetUp() {
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

void RealProgram::TearDown() {
  for (QProcess* process : {&program_, &display_}) {
    process->terminate();
    if (!process->waitForFinished(5000)) process->kill();
    process->waitForFinished(2000);
  }
}

QString RealProgram::xdotool(const QStringList& arguments) {
  QProcess tool;
  tool.setProcessEnvironment(environment_);
  tool.start("xdotool", arguments);
  if (!tool.waitForFinished(20000)) return {};
  return QString::fromUtf8(tool.readAllStandardOutput()).trimmed();
}

void RealProgram::start(const QStringList& arguments) {
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

void RealProgram::kill() {
  program_.kill();
  program_.waitForFinished();
}

void RealProgram::type(const QString& text) {
  const QStringList lines = text.split('\n');
  for (qsizetype i = 0; i < lines.size(); ++i) {
    // xdotool would look for a key of the line feed's name, which a plain keyboard has not.
    if (i > 0) press("Return");
    if (!lines[i].isEmpty()) xdotool({"type", "--delay", "15", lines[i]});
  }
}

}  // namespace steadyturn
