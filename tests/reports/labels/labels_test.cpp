// Labels as poppler sets them and as a scanner reads them.
#include "labels.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QBuffer>
#include <QFile>
#include <QImage>
#include <QRectF>
#include <QRegularExpression>
#include <QTemporaryDir>

#include "failing_sink.h"
#include "label_code.h"
#include "run_program.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

Date on(const char* date) { return parseDate(date, "date").value(); }
const Date today = on("2026-03-15");

ToolLabel demoLabel(std::string tool, std::string description = "Wheel bay, long handle") {
  return {.tool = std::move(tool),
          .description = std::move(description),
          .lastCheck = on("2026-03-14"),
          .dueDate = on("2027-03-14"),
          .state = "ready"};
}

struct Word {
  std::string text;
  int page = 0;
  QRectF box;  // points
};

class LabelsPdf {
 public:
  LabelsPdf(const std::vector<ToolLabel>& labels, const LabelSheet& sheet) {
    QFile file(path());
    EXPECT_TRUE(file.open(QIODevice::WriteOnly));
    const auto written = writeLabels(labels, sheet, today, file);
    EXPECT_TRUE(written) << (written ? "" : written.error().front().accepted);
  }

  QString path() const { return folder_.filePath(QStringLiteral("labels.pdf")); }
  std::string info() const {
    return test::runProgram("poppler-utils", QStringLiteral("pdfinfo"), {path()}).simplified().toStdString();
  }
  std::string words() const {
    return test::runProgram("poppler-utils", QStringLiteral("pdftotext"),
                            {QStringLiteral("-layout"), path(), QStringLiteral("-")})
        .simplified()
        .toStdString();
  }

  std::vector<Word> boxes() const {
    const auto html = test::runProgram("poppler-utils", QStringLiteral("pdftotext"),
                                       {QStringLiteral("-bbox"), path(), QStringLiteral("-")});
    static const QRegularExpression item(QStringLiteral(
        "<page |<word xMin=\"([-\\d.]+)\" yMin=\"([-\\d.]+)\" xMax=\"([-\\d.]+)\" yMax=\"([-\\d.]+)\">(.*)</word>"));
    std::vector<Word> words;
    int page = 0;
    for (auto found = item.globalMatch(html); found.hasNext();) {
      const auto one = found.next();
      if (one.captured(5).isEmpty()) {
        ++page;
        continue;
      }
      const QPointF from(one.captured(1).toDouble(), one.captured(2).toDouble());
      const QPointF to(one.captured(3).toDouble(), one.captured(4).toDouble());
      words.push_back({.text = one.captured(5).toStdString(), .page = page, .box = QRectF(from, to)});
    }
    return words;
  }

  // What a scanner that is held over these places reads, printed at 300 dots an inch: a line a code.
  std::vector<std::string> scanned(int page, const std::vector<LabelPlace>& places) const {
    const auto number = QString::number(page);
    const auto image = folder_.filePath(QStringLiteral("page"));
    test::runProgram("poppler-utils", QStringLiteral("pdftoppm"),
                     {QStringLiteral("-r"), QStringLiteral("300"), QStringLiteral("-gray"), QStringLiteral("-f"),
                      number, QStringLiteral("-l"), number, QStringLiteral("-singlefile"), path(), image});
    const QImage whole(image + ".pgm");
    constexpr double dots = 300 / 25.4;
    QStringList arguments{QStringLiteral("--quiet"), QStringLiteral("--raw")};
    for (const auto& place : places) {
      arguments << folder_.filePath(QStringLiteral("label%1.pgm").arg(arguments.size()));
      const QRectF seen(place.left * dots, place.top * dots, place.width * dots, place.height * dots);
      EXPECT_TRUE(whole.copy(seen.toRect()).save(arguments.last()));
    }
    const auto lines = test::runProgram("zbar-tools", QStringLiteral("zbarimg"), arguments);
    std::vector<std::string> codes;
    for (const auto& line : lines.split('\n', Qt::SkipEmptyParts)) codes.push_back(line.toStdString());
    return codes;
  }

 private:
  QTemporaryDir folder_;
};

std::vector<ToolLabel> manyLabels(int count) {
  std::vector<ToolLabel> labels;
  for (int i = 0; i < count; ++i) labels.push_back(demoLabel("TW-" + std::to_string(100 + i)));
  return labels;
}

TEST(Labels, SingleLabelSaysWhatItMustAndItsCodeIsRead) {
  const LabelsPdf pdf({demoLabel("W06")}, singleLabel());
  const auto words = pdf.words();
  for (const char* needed :
       {"W06", "Wheel bay, long handle", "Checked 2026-03-14", "Next due 2027-03-14", "On 2026-03-15: ready"}) {
    EXPECT_THAT(words, HasSubstr(needed));
  }
  EXPECT_EQ(pdf.scanned(1, {singleLabel().place(0)}), std::vector<std::string>{"STURN:T:W06"});
  // 62 mm = 175.75 pt, 29 mm = 82.20 pt (1 pt = 1/72 in); whole points are written.
  EXPECT_THAT(pdf.info(), HasSubstr("Page size: 176 x 82 pts"));
  EXPECT_THAT(pdf.info(), HasSubstr("Pages: 1"));
}

TEST(Labels, SaysSoWhereNothingIsKnown) {
  const auto words = LabelsPdf({{.tool = "W07", .description = {}, .state = "never checked"}}, singleLabel()).words();
  EXPECT_THAT(words, HasSubstr("Never checked"));
  EXPECT_THAT(words, HasSubstr("No due date"));
}

TEST(Labels, MarkIsByFarTheLargest) {
  const auto boxes = LabelsPdf({demoLabel("W06")}, singleLabel()).boxes();
  ASSERT_GT(boxes.size(), 5U);
  EXPECT_EQ(boxes[0].text, "W06");
  for (std::size_t i = 1; i < boxes.size(); ++i) EXPECT_GT(boxes[0].box.height(), 2 * boxes[i].box.height());
}

TEST(Labels, FillsSheetsRowByRowFromTheFirstPlaceLeft) {
  auto sheet = a4Labels();
  sheet.skip = 2;
  const auto labels = manyLabels(25);
  const LabelsPdf pdf(labels, sheet);
  EXPECT_THAT(pdf.info(), HasSubstr("Pages: 2"));
  EXPECT_THAT(pdf.info(), HasSubstr("(A4)"));
  const auto boxes = pdf.boxes();
  for (int i = 0; i < 25; ++i) {
    const auto& mark = labels[static_cast<std::size_t>(i)].tool;
    const auto word = std::ranges::find(boxes, mark, &Word::text);
    ASSERT_NE(word, boxes.end()) << mark;
    EXPECT_EQ(word->page, i + 2 < 24 ? 1 : 2) << mark;
    const auto place = sheet.place((i + 2) % 24);
    const QPointF middle = word->box.center() * 25.4 / 72;
    EXPECT_TRUE(QRectF(place.left, place.top, place.width, place.height).contains(middle)) << mark;
  }
  for (int page = 1; page <= 2; ++page) {
    std::vector<std::string> codes;
    std::vector<LabelPlace> places;
    for (int i = 0; i < 25; ++i) {
      if ((i + 2) / 24 + 1 != page) continue;
      codes.push_back("STURN:T:" + labels[static_cast<std::size_t>(i)].tool);
      places.push_back(sheet.place((i + 2) % 24));
    }
    EXPECT_EQ(pdf.scanned(page, places), codes);
  }
}

// Hard cases: each label's words lie inside it and left of its code, and the code is read whatever the mark.
TEST(Labels, ClipsNothingAndRunsIntoNothing) {
  const std::string wide(18, 'W');
  const std::vector<ToolLabel> hard{
      demoLabel(wide),
      demoLabel("Workshop torque wrench number 14 of the heavy bay"),
      demoLabel("Größe 3/ü"),
      demoLabel("W1",
                "A description of more words than any label can hold: found in the long drawer under the second "
                "bench from the door, with the blue handle, after the flood, kept for the old tipper lorries, "
                "not to be lent to the other yard, since it came back bent the last time, and never oiled"),
      demoLabel("W2", std::string(120, 'M')),
      {.tool = "W3",
       .description = "Held one",
       .state = "held until the pawl has been renewed and the scale is read"}};
  for (const auto& sheet : {singleLabel(), singleLabel(40, 20), singleLabel(100, 50)}) {
    for (const auto& label : hard) {
      // Refused there, as another test says.
      if (sheet.pageWidth < 60 && (label.tool.size() > 20 || label.state.size() > 20)) continue;
      SCOPED_TRACE(label.tool + " on " + std::to_string(sheet.pageWidth));
      const LabelsPdf pdf({label}, sheet);
      const double scale = 72 / 25.4;
      std::string set;
      for (const auto& word : pdf.boxes()) {
        set += word.text;
        EXPECT_GE(word.box.left(), 1.9 * scale) << word.text;
        EXPECT_GE(word.box.top(), 1.5 * scale) << word.text;  // poppler's boxes count a font's whole ascent
        EXPECT_LE(word.box.bottom(), (sheet.pageHeight - 1.5) * scale) << word.text;
        EXPECT_LE(word.box.right(), (sheet.pageWidth - 2) * scale - 29 * 0.25 * scale) << word.text;
      }
      auto mark = QString::fromStdString(label.tool).remove(' ').toStdString();
      EXPECT_THAT(set, HasSubstr(mark));
      EXPECT_THAT(set, HasSubstr(QString::fromStdString(label.state).remove(' ').toStdString()));
      EXPECT_EQ(pdf.scanned(1, {sheet.place(0)}),
                std::vector<std::string>{writeLabelCode({.kind = LabelKind::Tool, .id = label.tool})});
    }
  }
}

TEST(Labels, DescriptionThatIsTooLongEndsInAnEllipsis) {
  std::string endless;
  for (int i = 0; i < 200; ++i) endless += "word" + std::to_string(i) + " ";
  const auto words = LabelsPdf({demoLabel("W06", endless)}, singleLabel()).words();
  EXPECT_THAT(words, HasSubstr("word0 word1"));
  EXPECT_THAT(words, HasSubstr("…"));
  EXPECT_THAT(words, HasSubstr("Next due 2027-03-14"));
}

TEST(Labels, RefusesWhatCanNotBePrintedBeforeWritingAnything) {
  QBuffer out;
  out.open(QIODevice::WriteOnly);
  const auto none = writeLabels({}, {.pageWidth = -1, .pageHeight = 29}, today, out);
  ASSERT_FALSE(none);
  ASSERT_EQ(none.error().size(), 2U);
  EXPECT_EQ(none.error()[0].field, "sheet.pageWidth");
  EXPECT_EQ(none.error()[1].field, "labels");
  const std::vector<ToolLabel> labels{demoLabel("W1"), demoLabel(std::string(400, 'x')), demoLabel(""),
                                      demoLabel(std::string(5000, 'W'))};
  const auto long_ = writeLabels(labels, singleLabel(), today, out);
  ASSERT_FALSE(long_);
  std::vector<std::string> fields;
  for (const auto& problem : long_.error()) fields.push_back(problem.field);
  EXPECT_EQ(fields, (std::vector<std::string>{"labels[1].tool", "labels[2].tool", "labels[3].tool"}));
  auto wordy = demoLabel("W3");
  wordy.state = "held until the pawl has been renewed and the scale is read";
  EXPECT_FALSE(writeLabels(std::vector{wordy}, singleLabel(40, 20), today, out));
  EXPECT_EQ(out.size(), 0);
}

TEST(Labels, ClaimsPdfA1bAndEmbedsItsFonts) {
  const LabelsPdf pdf({demoLabel("W06")}, singleLabel());
  QFile file(pdf.path());
  ASSERT_TRUE(file.open(QIODevice::ReadOnly));
  const auto bytes = file.readAll();
  EXPECT_TRUE(bytes.contains("<pdfaid:part>1</pdfaid:part>") || bytes.contains("pdfaid:part=\"1\""));
  const auto fonts = test::runProgram("poppler-utils", QStringLiteral("pdffonts"), {pdf.path()});
  const auto lines = fonts.split('\n', Qt::SkipEmptyParts);
  ASSERT_GT(lines.size(), 2);
  for (qsizetype i = 2; i < lines.size(); ++i)
    EXPECT_TRUE(lines[i].simplified().contains(QStringLiteral(" yes "))) << lines[i].toStdString();
}

TEST(Labels, NoticesAnOutputCutShort) {
  const auto labels = manyLabels(3);
  for (const qint64 room : {0, 1, 3000}) {
    test::FailingSink sink(room);
    const auto written = writeLabels(labels, a4Labels(), today, sink);
    ASSERT_FALSE(written);
    EXPECT_EQ(written.error().front().kind, ProblemKind::CannotCreate);
  }
}

}  // namespace
}  // namespace steadyturn
