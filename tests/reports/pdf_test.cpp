// Words, pages and places as poppler reads them back.
#include <gmock/gmock.h>

#include <QFile>
#include <QJsonArray>
#include <QJsonDocument>
#include <QJsonObject>
#include <QProcess>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "demo_reports.h"
#include "writers.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

class Pdf {
 public:
  explicit Pdf(const ReportDocument& report) {
    QFile file(path());
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    EXPECT_TRUE(writePdf(report, file));
  }
  QString path() const { return folder_.filePath(QStringLiteral("report.pdf")); }

  QString run(const QString& program, const QStringList& arguments) const {
    QProcess process;
    process.start(program, arguments);
    EXPECT_TRUE(process.waitForFinished()) << program.toStdString() << " is needed (Debian: poppler-utils)";
    EXPECT_EQ(process.exitCode(), 0) << process.readAllStandardError().toStdString();
    return QString::fromUtf8(process.readAllStandardOutput());
  }
  // All words, one blank between them.
  std::string words() const {
    return run(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), path(), QStringLiteral("-")})
        .simplified()
        .toStdString();
  }
  QStringList pages() const {
    auto pages =
        run(QStringLiteral("pdftotext"), {QStringLiteral("-layout"), path(), QStringLiteral("-")}).split('\f');
    pages.removeLast();  // pdftotext ends the last page, too
    return pages;
  }

 private:
  QTemporaryDir folder_;
};

ReportDocument longReport() {
  ReportDocument report{
      .title = "Register", .number = "R-1", .issuer = "Depot North", .issued = "2026-03-15", .blocks = {}};
  TableBlock table{.heading = "Everything",
                   .columns = {{"mark", Align::Left}, {"what it is", Align::Left}, {"value, %", Align::Right}},
                   .rows = {}};
  for (int i = 0; i < 200; ++i) {
    table.rows.push_back(
        {"row" + std::to_string(i),
         "a wrench with words enough to wrap onto a second line of its cell, "
         "since nobody keeps it short, and one_word_without_any_place_to_break_it_as_serial_numbers_are_" +
             std::to_string(i),
         "+1.00"});
  }
  report.blocks.push_back(table);
  return report;
}

TEST(Pdf, CertificateFitsOneSheetAndItsWordsCanBeSearched) {
  const Pdf pdf(buildCertificate(test::demoCertificate()));
  EXPECT_EQ(pdf.pages().size(), 2);
  const auto words = pdf.words();
  for (const char* needed : {"Torque tool check certificate", "Number C-42", "Depot North, Quay Road 4, Northhaven",
                             "page 1 of 2", "page 2 of 2", "End of C-42", "PASS: tool TW-07", "Type II, class A",
                             "Harbourside Tools", "no accreditation is claimed", "101.2 100.8 101.0 101.4 100.9",
                             "not evaluated, counted as 0", "Authorised by", "As found on 2026-03-14"}) {
    EXPECT_THAT(words, HasSubstr(needed));
  }
}

TEST(Pdf, NumberStandsOnEachPageAndTheHeaderOfATableIsRepeated) {
  const Pdf pdf(longReport());
  const auto pages = pdf.pages();
  ASSERT_GT(pages.size(), 3);
  for (qsizetype i = 0; i < pages.size(); ++i) {
    const auto page = pages[i].simplified().toStdString();
    EXPECT_THAT(page, HasSubstr("R-1"));
    EXPECT_THAT(page, HasSubstr("mark what it is value, %"));
    EXPECT_THAT(page, HasSubstr("page " + std::to_string(i + 1) + " of " + std::to_string(pages.size())));
  }
  EXPECT_EQ(pages.join(' ').count(QStringLiteral("End of R-1")), 1);
  EXPECT_TRUE(pages.last().contains(QStringLiteral("End of R-1")));
  static const QRegularExpression row(QStringLiteral("\\brow(\\d+)\\b"));
  auto found = row.globalMatch(pages.join(' '));
  for (int i = 0; i < 200; ++i) {
    ASSERT_TRUE(found.hasNext());
    EXPECT_EQ(found.next().captured(1).toInt(), i);
  }
}

// Every word's box lies within the paper's margins, so that nothing is cut off.
void expectInsideThePage(const Pdf& pdf) {
  const auto boxes = pdf.run(QStringLiteral("pdftotext"), {QStringLiteral("-bbox"), pdf.path(), QStringLiteral("-")});
  static const QRegularExpression box(QStringLiteral(
      "<word xMin=\"([-\\d.]+)\" yMin=\"([-\\d.]+)\" xMax=\"([-\\d.]+)\" yMax=\"([-\\d.]+)\">(.*)</word>"));
  auto found = box.globalMatch(boxes);
  ASSERT_TRUE(found.hasNext());
  while (found.hasNext()) {
    const auto word = found.next();
    // A4 is 595 × 842 points; the margins are 44.
    EXPECT_GE(word.captured(1).toDouble(), 43) << word.captured(5).toStdString();
    EXPECT_LE(word.captured(3).toDouble(), 595 - 43) << word.captured(5).toStdString();
    EXPECT_GE(word.captured(2).toDouble(), 40) << word.captured(5).toStdString();
    EXPECT_LE(word.captured(4).toDouble(), 842 - 40) << word.captured(5).toStdString();
  }
}

TEST(Pdf, ClipsNothing) {
  expectInsideThePage(Pdf(buildCertificate(test::demoCertificate())));
  expectInsideThePage(Pdf(longReport()));
  ReportDocument wordy{.title = std::string(300, 'W'),
                       .number = std::string(200, 'n'),
                       .issuer = "Shop",
                       .issued = "2026-01-01",
                       .blocks = {}};
  std::string text;
  for (int i = 0; i < 3000; ++i) text += "word" + std::to_string(i) + " ";
  wordy.blocks.push_back(ParagraphBlock{.heading = "Long", .text = text});
  wordy.blocks.push_back(FactsBlock{.heading = "Facts", .facts = {{"a name", text}}});
  const Pdf pdf(wordy);
  expectInsideThePage(pdf);
  const auto words = pdf.words();
  EXPECT_THAT(words, HasSubstr("word0 "));
  EXPECT_THAT(words, HasSubstr("word2999 "));
}

TEST(Pdf, DrawsChartsWithTheirWordsAndNothingAsAPicture) {
  auto report = buildCertificate(test::demoCertificate());
  report.blocks.push_back(ChartBlock{historyChart(test::demoHistory())});
  const Pdf pdf(report);
  const auto words = pdf.words();
  for (const char* needed : {"TW-07 at 60 N·m", "limit +4 %", "adjusted 2023-02-14", "fitted drift"}) {
    EXPECT_THAT(words, HasSubstr(needed));
  }
  const auto images = pdf.run(QStringLiteral("pdfimages"), {QStringLiteral("-list"), pdf.path()});
  EXPECT_EQ(images.split('\n', Qt::SkipEmptyParts).size(), 2) << images.toStdString();  // its two header lines
}

TEST(Pdf, EmbedsEveryFontAndClaimsPdfA1b) {
  const Pdf pdf(buildCertificate(test::demoCertificate()));
  const auto fonts = pdf.run(QStringLiteral("pdffonts"), {pdf.path()}).split('\n', Qt::SkipEmptyParts);
  ASSERT_GT(fonts.size(), 2);
  for (qsizetype i = 2; i < fonts.size(); ++i)
    EXPECT_TRUE(fonts[i].simplified().contains(QStringLiteral(" yes "))) << fonts[i].toStdString();
  QFile file(pdf.path());
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const auto bytes = file.readAll();
  EXPECT_TRUE(bytes.contains("<pdfaid:part>1</pdfaid:part>") || bytes.contains("pdfaid:part=\"1\""));
}

// Read back by qpdf: every heading in its order, with the page it stands on, and a file without a fault.
TEST(Pdf, HeadingsAreBookmarks) {
  ReportDocument report = longReport();
  report.blocks.push_back(ParagraphBlock{.heading = "Größe & Ende", .text = "The last words."});
  const Pdf pdf(report);
  const auto json = QJsonDocument::fromJson(
      pdf.run(QStringLiteral("qpdf"), {QStringLiteral("--json"), QStringLiteral("--json-key=outlines"), pdf.path()})
          .toUtf8());
  std::vector<std::pair<std::string, int>> found;
  for (const auto& item : json.object().value("outlines").toArray()) {
    const auto outline = item.toObject();
    found.emplace_back(outline.value("title").toString().toStdString(), outline.value("destpageposfrom1").toInt());
  }
  EXPECT_THAT(found, testing::ElementsAre(testing::Pair("Register", 1), testing::Pair("Everything", 1),
                                          testing::Pair("Größe & Ende", static_cast<int>(pdf.pages().size()))));
  EXPECT_THAT(pdf.run(QStringLiteral("qpdf"), {QStringLiteral("--check"), pdf.path()}).toStdString(),
              HasSubstr("No syntax or stream encoding errors found"));
}

}  // namespace
}  // namespace steadyturn
