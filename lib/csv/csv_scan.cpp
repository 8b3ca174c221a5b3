#include "csv_scan.h"

#include <algorithm>

namespace steadyturn {
namespace {

constexpr std::size_t none = std::string_view::npos;

class Scanner {
 public:
  Scanner(std::string_view bytes, bool isAll, char separator, std::vector<CsvCellSpan>& cells)
      : bytes_(bytes), isAll_(isAll), separator_(separator), cells_(cells) {
    cells_.clear();
  }

  CsvScan run() {
    CsvScan scan;
    while (!ended_ && fault_ == CsvFault::None && !starved_) takeCell();
    if (starved_) return scan;
    if (fault_ != CsvFault::None) {
      scan.fault = fault_;
      scan.faultCell = cells_.size();
      if (!skipLine()) return scan;
    }
    scan.complete = true;
    scan.length = at_;
    const std::string_view record = bytes_.substr(0, at_);
    scan.lineBreaks = quoted_ ? static_cast<std::size_t>(std::ranges::count(record, '\n')) : record.ends_with('\n');
    return scan;
  }

 private:
  void takeCell() {
    if (at_ < bytes_.size() && bytes_[at_] == '"') {
      takeQuoted();
    } else if (at_ == bytes_.size() && !isAll_) {
      starved_ = true;
    } else {
      const std::size_t begin = at_;
      while (at_ < bytes_.size() && !ends(bytes_[at_]) && bytes_[at_] != '"') ++at_;
      closeCell({.begin = begin, .end = at_});
    }
  }

  void takeQuoted() {
    quoted_ = true;
    CsvCellSpan cell{.begin = ++at_};
    for (;;) {
      at_ = bytes_.find('"', at_);
      // Whether a quote closes or is doubled shows in the byte behind it.
      if (at_ == none || (at_ + 1 == bytes_.size() && !isAll_)) {
        at_ = bytes_.size();
        if (isAll_) {
          fault_ = CsvFault::QuoteLeftOpen;
        } else {
          starved_ = true;
        }
        return;
      }
      if (at_ + 1 == bytes_.size() || bytes_[at_ + 1] != '"') break;
      cell.doubledQuotes = true;
      at_ += 2;
    }
    cell.end = at_++;
    if (at_ < bytes_.size() && !ends(bytes_[at_])) {
      fault_ = CsvFault::QuoteInside;
    } else {
      closeCell(cell);
    }
  }

  bool ends(char c) const { return c == separator_ || c == '\n' || c == '\r'; }

  // What stands behind the cell: a separator, the line's end, the text's end, or something that may not be there.
  void closeCell(CsvCellSpan cell) {
    if (at_ == bytes_.size()) {
      starved_ = !isAll_;
      ended_ = isAll_;
    } else if (bytes_[at_] == separator_) {
      ++at_;
    } else if (bytes_[at_] == '\n') {
      ++at_;
      ended_ = true;
    } else if (bytes_[at_] == '"') {
      fault_ = CsvFault::QuoteInside;
      return;
    } else if (at_ + 1 == bytes_.size() && !isAll_) {
      starved_ = true;
    } else if (at_ + 1 < bytes_.size() && bytes_[at_ + 1] == '\n') {
      at_ += 2;
      ended_ = true;
    } else {
      fault_ = CsvFault::LoneReturn;
      return;
    }
    cells_.push_back(cell);
  }

  bool skipLine() {
    const std::size_t end = bytes_.find('\n', at_);
    if (end == none && !isAll_) return false;
    at_ = end == none ? bytes_.size() : end + 1;
    return true;
  }

  std::string_view bytes_;
  bool isAll_;
  char separator_;
  std::vector<CsvCellSpan>& cells_;
  std::size_t at_ = 0;
  CsvFault fault_ = CsvFault::None;
  bool ended_ = false;
  bool starved_ = false;
  bool quoted_ = false;
};

}  // namespace

CsvScan scanRecord(std::string_view bytes, bool isAll, char separator, std::vector<CsvCellSpan>& cells) {
  return Scanner(bytes, isAll, separator, cells).run();
}

char separatorOf(std::string_view header) {
  bool quoted = false;
  for (const char c : header) {
    if (c == '"') quoted = !quoted;
    if (quoted) continue;
    if (c == ',' || c == ';') return c;
    if (c == '\n') break;
  }
  return ',';
}

}  // namespace steadyturn
