#include "table_writer.h"

#include <algorithm>

#include "torque.h"

namespace steadyturn {

void TableWriter::number(std::optional<double> number) { typedNumber(number ? writeNumber(*number) : std::string()); }

void TableWriter::typedNumber(std::string_view typed) {
  if (!decimalComma_) return csv_.plain(typed);
  std::string written(typed);
  std::ranges::replace(written, '.', ',');
  csv_.plain(written);
}

void TableWriter::date(std::optional<Date> date) { csv_.plain(date ? writeDate(*date) : std::string()); }

void TableWriter::flag(std::optional<bool> flag) { csv_.plain(!flag ? "" : *flag ? "yes" : "no"); }

void TableWriter::endRow() {
  constexpr std::size_t enough = std::size_t{64} * 1024;
  csv_.endRow();
  if (buffer_.size() >= enough) flush();
}

void TableWriter::flush() {
  if (!failed_) failed_ = !out_.write(buffer_.data(), static_cast<std::streamsize>(buffer_.size()));
  buffer_.clear();
}

Result<void> TableWriter::finish() {
  if (advance_.cancelled()) return refuse(cancelledByPerson());
  flush();
  if (failed_ || !out_.flush()) {
    return refuse({.kind = ProblemKind::CannotCreate,
                   .field = {},
                   .found = "an output that takes no more",
                   .accepted = "a file on a disk with room, which may be written"});
  }
  advance_.to(1);
  return {};
}

}  // namespace steadyturn
