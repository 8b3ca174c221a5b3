#include "pdf_outline.h"

#include <QRegularExpression>
#include <QStringEncoder>
#include <utility>

namespace steadyturn {
namespace {

// What the end of the file and its catalog say.
struct PdfFile {
  qsizetype size = 0;       // objects, the free one included
  qsizetype root = 0;       // number of the catalog
  QByteArray info, id;      // as the trailer has them
  QByteArray crossTable;    // where the cross-reference table begins
  QByteArray catalog;       // what stands between its << and >>
  QList<QByteArray> pages;  // their object numbers
};

QByteArray captured(const QString& text, const char* pattern) {
  const QRegularExpression expression(QLatin1String(pattern), QRegularExpression::DotMatchesEverythingOption);
  return expression.match(text).captured(1).toLatin1();
}

QByteArray objectText(const QByteArray& pdf, qsizetype number) {
  const QByteArray head = "\n" + QByteArray::number(number) + " 0 obj\n";
  const auto begin = pdf.indexOf(head) + head.size();
  return pdf.mid(begin, pdf.indexOf("endobj", begin) - begin);
}

PdfFile readEnd(const QByteArray& pdf) {
  const QString trailer = QString::fromLatin1(pdf.mid(pdf.lastIndexOf("trailer")));
  PdfFile file;
  file.size = captured(trailer, "/Size (\\d+)").toLongLong();
  file.root = captured(trailer, "/Root (\\d+)").toLongLong();
  file.info = captured(trailer, "/Info (\\d+ 0 R)");
  file.id = captured(trailer, "/ID (\\[.*?\\])");
  file.crossTable = captured(trailer, "startxref\\s+(\\d+)");
  file.catalog = captured(QString::fromLatin1(objectText(pdf, file.root)), "<<(.*)>>");
  const auto tree = captured(QString::fromLatin1(file.catalog), "/Pages (\\d+)").toLongLong();
  const QByteArray kids = captured(QString::fromLatin1(objectText(pdf, tree)), "/Kids\\s*\\[(.*?)\\]");
  for (const QByteArray& line : kids.simplified().split(' ')) {
    if (line != "0" && line != "R") file.pages.push_back(line);
  }
  return file;
}

QByteArray titleOf(const PdfBookmark& bookmark) {
  QStringEncoder encoder(QStringConverter::Utf16BE, QStringConverter::Flag::WriteBom);
  const QByteArray bytes = encoder(bookmark.title);
  return "<" + bytes.toHex() + ">";
}

QByteArray reference(qsizetype number) { return QByteArray::number(number) + " 0 R"; }

class Update {
 public:
  Update(QByteArray pdf, const PdfFile& file) : pdf_(std::move(pdf)), file_(file) {}

  void add(qsizetype number, const QByteArray& dictionary) {
    places_.emplace_back(number, pdf_.size());
    pdf_ += QByteArray::number(number) + " 0 obj\n<<\n" + dictionary + ">>\nendobj\n";
  }

  QByteArray finish(qsizetype size) {
    const auto table = pdf_.size();
    pdf_ += "xref\n";
    for (const auto& [number, place] : places_) {
      pdf_ += QByteArray::number(number) + " 1\n" + QByteArray::number(place).rightJustified(10, '0') + " 00000 n \n";
    }
    pdf_ += "trailer\n<<\n/Size " + QByteArray::number(size) + "\n/Info " + file_.info + "\n/Root " +
            reference(file_.root) + "\n/ID " + file_.id + "\n/Prev " + file_.crossTable + "\n>>\nstartxref\n" +
            QByteArray::number(table) + "\n%%EOF\n";
    return std::move(pdf_);
  }

 private:
  QByteArray pdf_;
  const PdfFile& file_;
  std::vector<std::pair<qsizetype, qsizetype>> places_;
};

}  // namespace

QByteArray withOutline(const QByteArray& pdf, const std::vector<PdfBookmark>& bookmarks, double height) {
  if (bookmarks.empty()) return pdf;
  const PdfFile file = readEnd(pdf);
  const qsizetype outline = file.size;
  const qsizetype first = outline + 1;
  const qsizetype last = outline + static_cast<qsizetype>(bookmarks.size());
  Update update(pdf, file);
  update.add(file.root, file.catalog.trimmed() + "\n/Outlines " + reference(outline) + "\n/PageMode /UseOutlines\n");
  update.add(outline, "/Type /Outlines\n/First " + reference(first) + "\n/Last " + reference(last) + "\n/Count " +
                          QByteArray::number(bookmarks.size()) + "\n");
  for (qsizetype number = first; number <= last; ++number) {
    const PdfBookmark& bookmark = bookmarks[static_cast<std::size_t>(number - first)];
    QByteArray item = "/Title " + titleOf(bookmark) + "\n/Parent " + reference(outline) + "\n/Dest [" +
                      file.pages.at(static_cast<qsizetype>(bookmark.page)) + " 0 R /XYZ 0 " +
                      QByteArray::number(height - bookmark.fromTop, 'f', 1) + " null]\n";
    if (number > first) item += "/Prev " + reference(number - 1) + "\n";
    if (number < last) item += "/Next " + reference(number + 1) + "\n";
    update.add(number, item);
  }
  return update.finish(last + 1);
}

}  // namespace steadyturn
