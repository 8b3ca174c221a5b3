// The sheet says what to do and what was done, and comes out of the PDF writer whole.
#include "job_sheet.h"

#include <gmock/gmock.h>

#include <QFile>
#include <QTemporaryDir>

#include "run_program.h"
#include "writers.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;
using testing::Not;

constexpr Date day = std::chrono::sys_days(std::chrono::year(2026) / 3 / 14);

JobLine coverLine() {
  JobLine line;
  line.listed = true;
  line.spec.id = "VB-02";
  line.spec.component = "oil filter housing cover";
  line.spec.partMaterial = "plastic";
  line.spec.target = 25;
  line.spec.stages = {{.value = 10}, {.value = 25}};
  line.spec.seal = "O-ring";
  line.spec.renew = true;
  line.spec.seatCheck = "cover sits flat";
  line.spec.source = "data sheet 7";
  return line;
}

JobSheetData sheetData() {
  JobSheetData data{.shopName = "Depot North", .shopPlace = "Northhaven", .issued = day, .sheet = {}};
  data.sheet.job = {.id = "J-1", .vehicle = "van 2", .opened = {}, .closed = {}};
  JobEvent opened;
  opened.job = "J-1";
  opened.vehicle = "van 2";
  opened.date = day;
  opened.service = "oil and filter, van";
  data.sheet.job.opened = opened;
  data.sheet.lines = {coverLine()};
  return data;
}

std::string onPaper(const ReportDocument& report) {
  const QTemporaryDir folder;
  QFile file(folder.filePath(QStringLiteral("sheet.pdf")));
  EXPECT_TRUE(file.open(QIODevice::WriteOnly));
  EXPECT_TRUE(writePdf(report, file));
  file.close();
  return test::runProgram("poppler-utils", QStringLiteral("pdftotext"),
                          {QStringLiteral("-raw"), file.fileName(), QStringLiteral("-")})
      .simplified()
      .toStdString();
}

TEST(JobSheet, SaysWhatIsToBeDone) {
  const auto words = onPaper(buildJobSheet(sheetData()));
  for (const char* needed :
       {"J-1", "van 2", "oil and filter, van", "10 N·m, then 25 N·m", "renew the O-ring", "cover sits flat",
        "VB-02: not tightened", "NOT RELEASED", "data sheet 7", "service data come first", "Tightened by"}) {
    EXPECT_THAT(words, HasSubstr(needed));
  }
  EXPECT_THAT(words, HasSubstr("NO LIMIT ON"));  // the cell may break after it
}

TEST(JobSheet, SaysWhatWasDoneAndWhatLacks) {
  auto data = sheetData();
  auto& line = data.sheet.lines[0];
  line.spec.approvedBy = "lead";
  line.spec.partLimit = 30;
  Tightening done;
  done.date = day;
  done.fastener = "VB-02";
  done.tool = "W04";
  done.setting = "24.75";
  done.seatChecked = true;
  done.by = "petra";
  done.stagesDone = 1;
  done.sealRenewed = false;
  line.tightenings = {done};
  const auto words = onPaper(buildJobSheet(data));
  for (const char* needed :
       {"W04", "24.75 N·m", "1 of 2", "petra", "30 N·m", "VB-02: 1 of 2 stages", "seal not renewed"}) {
    EXPECT_THAT(words, HasSubstr(needed));
  }
  EXPECT_THAT(words, Not(HasSubstr("NOT RELEASED")));
  EXPECT_THAT(words, Not(HasSubstr("seat not seen")));
}

}  // namespace
}  // namespace steadyturn
