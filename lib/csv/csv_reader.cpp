#include "csv_reader.h"

#include <cstring>
#include <utility>

#include "utf8.h"

namespace steadyturn {
namespace {

constexpr std::size_t chunk = std::size_t{256} * 1024;
constexpr std::string_view byteOrderMark = "\xEF\xBB\xBF";

std::string_view withoutBlanks(std::string_view text) {
  const std::size_t first = text.find_first_not_of(" \t");
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

// Cheap first look at a whole record: most are plain ASCII and need no second one.
bool isPlainAscii(std::string_view bytes) {
  unsigned odd = 0;
  for (const char c : bytes) odd |= static_cast<unsigned>(static_cast<signed char>(c) <= 0);
  return odd == 0;
}

std::size_t lineEndLength(std::string_view record) {
  if (record.ends_with("\r\n")) return 2;
  return record.ends_with('\n') ? 1 : 0;
}

// Makes one quote of each two, in place, for the text only gets shorter; returns its new size.
std::size_t halveQuotes(char* text, std::size_t size) {
  std::size_t kept = 0;
  for (std::size_t i = 0; i < size; ++i) {
    text[kept++] = text[i];
    if (text[i] == '"') ++i;
  }
  return kept;
}

std::string count(std::size_t number, std::string_view what) {
  return std::to_string(number) + " " + std::string(what) + (number == 1 ? "" : "s");
}

}  // namespace

CsvReader::CsvReader(Source source) : source_(std::move(source)), buffer_(chunk) {}

// Makes room and reads more; false at the end of the source.
bool CsvReader::fill() {
  if (sourceIsEmpty_) return false;
  if (begin_ > 0) {
    std::memmove(buffer_.data(), buffer_.data() + begin_, end_ - begin_);
    end_ -= begin_;
    begin_ = 0;
  }
  if (end_ == buffer_.size()) buffer_.resize(buffer_.size() + chunk);
  const std::size_t got = source_(buffer_.data() + end_, buffer_.size() - end_);
  end_ += got;
  sourceIsEmpty_ = got == 0;
  return got > 0;
}

Result<std::vector<std::string>> CsvReader::header() {
  while (end_ < byteOrderMark.size() && fill()) {
  }
  if (std::string_view(buffer_.data(), end_).starts_with(byteOrderMark)) begin_ = byteOrderMark.size();
  switch (read()) {
    case Step::Row:
      break;
    case Step::Bad:
      over_ = true;
      return refuse(problem_);
    case Step::End:
      return refuse({.field = {},
                     .found = "an empty file",
                     .accepted = "a header with the column names, then a row a record",
                     .line = 1});
  }
  for (const std::string_view cell : cells_) header_.emplace_back(withoutBlanks(cell));
  return header_;
}

CsvReader::Step CsvReader::next() {
  const Step step = read();
  if (step != Step::Row || cells_.size() == header_.size()) return step;
  return bad(cells_.size() < header_.size() ? header_[cells_.size()] : std::string(), count(cells_.size(), "cell"),
             count(header_.size(), "cell") + ", as the header has");
}

// The next record that is no blank line; false at the end.
bool CsvReader::nextRecord(CsvScan& scan) {
  for (;;) {
    if (begin_ == end_ && !fill()) return false;
    const std::string_view bytes(buffer_.data() + begin_, end_ - begin_);
    if (header_.empty()) separator_ = separatorOf(bytes);
    scan = scanRecord(bytes, sourceIsEmpty_, separator_, spans_);
    if (!scan.complete) {
      constexpr std::size_t lineEnd = 2;
      if (bytes.size() > longestRecord + lineEnd) return true;
      fill();
      continue;
    }
    if (scan.length != lineEndLength(bytes.substr(0, scan.length))) return true;
    begin_ += scan.length;
    line_ += scan.lineBreaks;
  }
}

CsvReader::Step CsvReader::read() {
  CsvScan scan;
  if (over_ || !nextRecord(scan)) return Step::End;
  row_ = {.line = line_, .cells = {}};
  const std::string_view record(buffer_.data() + begin_, scan.length);
  if (!scan.complete || scan.length - lineEndLength(record) > longestRecord) {
    over_ = true;
    return bad({}, "a row of more than 1 MiB", "rows of at most 1 MiB; a quote may have been left open");
  }
  begin_ += scan.length;
  line_ += scan.lineBreaks;
  switch (scan.fault) {
    case CsvFault::QuoteInside:
      return bad(columnName(scan.faultCell), "a quote inside the cell",
                 "the whole cell in quotes and each quote in it doubled (RFC 4180)");
    case CsvFault::LoneReturn:
      return bad(columnName(scan.faultCell), "a carriage return without a line feed",
                 "lines that end with LF or CR LF");
    case CsvFault::QuoteLeftOpen:
      over_ = true;
      return bad(columnName(scan.faultCell), "a quote that is never closed", "a closing quote");
    case CsvFault::None:
      break;
  }
  return cutCells(scan.length) ? Step::Row : Step::Bad;
}

// Makes cells of the spans of the record that ends at begin_.
bool CsvReader::cutCells(std::size_t length) {
  char* const record = buffer_.data() + begin_ - length;
  const bool plain = isPlainAscii({record, length});
  cells_.clear();
  for (const CsvCellSpan& span : spans_) {
    const std::size_t size = span.end - span.begin;
    cells_.emplace_back(record + span.begin, span.doubledQuotes ? halveQuotes(record + span.begin, size) : size);
    if (plain) continue;
    if (!isUtf8(cells_.back())) {
      bad(columnName(cells_.size() - 1), "bytes that are not UTF-8", "a file saved as UTF-8");
      return false;
    }
    if (cells_.back().find('\0') != std::string_view::npos) {
      bad(columnName(cells_.size() - 1), "a NUL byte", "text");
      return false;
    }
  }
  row_.cells = cells_;
  return true;
}

CsvReader::Step CsvReader::bad(std::string field, std::string found, std::string accepted) {
  problem_ = {
      .field = std::move(field), .found = std::move(found), .accepted = std::move(accepted), .line = row_.line};
  return Step::Bad;
}

std::string CsvReader::columnName(std::size_t cell) const {
  return cell < header_.size() ? header_[cell] : std::string();
}

}  // namespace steadyturn
