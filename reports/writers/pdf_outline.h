// Bookmarks for a PDF that QPdfWriter made, which can't make any itself: added behind its end as an incremental
// update (ISO 32000-1, 7.5.6 and 12.3.3), so that nothing of it changes.
#pragma once

#include <QByteArray>
#include <QString>
#include <vector>

namespace steadyturn {

struct PdfBookmark {
  QString title;
  std::size_t page = 0;  // from 0
  double fromTop = 0;    // of the page, in points
};

// The bookmarks stand in one row, in the order given. REQUIRES: a file as QPdfWriter writes it, with all the pages,
// each `height` points high.
QByteArray withOutline(const QByteArray& pdf, const std::vector<PdfBookmark>& bookmarks, double height);

}  // namespace steadyturn
