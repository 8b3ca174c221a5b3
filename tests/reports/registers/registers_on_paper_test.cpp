// Both lists as they come out of the PDF writer: every tool is there, whole, on A4.
#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QFile>
#include <QTemporaryDir>

#include "demo_register.h"
#include "run_program.h"
#include "writers.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

std::string wordsOf(const ReportDocument& report) {
  const QTemporaryDir folder;
  QFile file(folder.filePath(QStringLiteral("list.pdf")));
  EXPECT_TRUE(file.open(QIODevice::WriteOnly));
  EXPECT_TRUE(writePdf(report, file));
  file.close();
  return test::runProgram("poppler-utils", QStringLiteral("pdftotext"),
                          {QStringLiteral("-raw"), file.fileName(), QStringLiteral("-")})
      .simplified()
      .toStdString();
}

TEST(RegistersOnPaper, DueListHasEveryToolAndItsWork) {
  DueListData data{.shopName = "Depot North", .shopPlace = "Northhaven", .today = test::on("2026-03-11"), .work = {}};
  data.work.push_back(test::neverChecked("N-1"));
  for (int i = 0; i < 14; ++i)
    data.work.push_back(test::byDate(("W" + std::to_string(100 + i)).c_str(), "2026-03-02"));
  for (int i = 0; i < 4; ++i)
    data.work.push_back(test::byDrift(("D" + std::to_string(100 + i)).c_str(), "2026-03-13"));
  for (int i = 0; i < 9; ++i)
    data.work.push_back(test::byDate(("M" + std::to_string(100 + i)).c_str(), "2026-03-25"));
  const auto words = wordsOf(buildDueList(data));
  for (const auto& work : data.work) EXPECT_THAT(words, HasSubstr(work.tool));
  for (const char* needed : {"Torque tools due for a check", "Overdue, failed or never checked",
                             "This week, to Sunday", "This month, to", "Number due-2026-03-11", "20, 60, 100 N·m"}) {
    EXPECT_THAT(words, HasSubstr(needed));
  }
}

TEST(RegistersOnPaper, RegisterHasEveryTool) {
  ToolRegisterData data{
      .shopName = "Depot North", .shopPlace = "Northhaven", .today = test::on("2026-03-15"), .entries = {}};
  for (int i = 0; i < 60; ++i) {
    data.entries.push_back(
        test::demoEntry(("TW-" + std::to_string(100 + i)).c_str(), i % 7 == 0 ? "overdue" : "ready"));
  }
  const auto words = wordsOf(buildToolRegister(data));
  for (const auto& entry : data.entries) EXPECT_THAT(words, HasSubstr(entry.tool.id));
  EXPECT_THAT(words, HasSubstr("HT-20419"));
}

}  // namespace
}  // namespace steadyturn
