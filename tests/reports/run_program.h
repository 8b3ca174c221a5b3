// Runs another program over what a writer made and hands back what it says.
#pragma once

#include <gtest/gtest.h>

#include <QProcess>

namespace steadyturn::test {

// `package` is the Debian package that has it.
inline QString runProgram(const char* package, const QString& program, const QStringList& arguments) {
  QProcess process;
  process.start(program, arguments);
  EXPECT_TRUE(process.waitForFinished()) << program.toStdString() << " is needed (Debian: " << package << ")";
  EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
  return QString::fromUtf8(process.readAllStandardOutput());
}

}  // namespace steadyturn::test
