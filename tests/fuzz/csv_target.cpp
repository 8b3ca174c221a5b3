// Any bytes as a CSV file: read to the end, each row with as many cells as the header; what is written of a row reads
// back as the same row.
#include <algorithm>
#include <sstream>

#include "csv_reader.h"
#include "driver.h"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace steadyturn;
  std::string_view rest = fuzz::textOf(data, size);
  std::size_t piece = 1;
  CsvReader reader([&](char* into, std::size_t room) {
    const auto taken = std::min({room, rest.size(), piece});  // pieces that grow: boundaries fall everywhere
    piece = piece * 2 + 1;
    std::copy_n(rest.begin(), taken, into);
    rest.remove_prefix(taken);
    return taken;
  });
  const auto header = reader.header();
  if (!header) {
    fuzz::promise(!header.error().empty(), "a refused header says why");
    return 0;
  }
  std::size_t line = 0;
  for (auto step = reader.next(); step != CsvReader::Step::End; step = reader.next()) {
    if (step == CsvReader::Step::Bad) {
      fuzz::promise(reader.problem().line.has_value(), "a bad row has its line number");
      continue;
    }
    fuzz::promise(reader.row().cells.size() == header->size(), "a row has as many cells as the header");
    fuzz::promise(reader.row().line > line, "lines rise");
    line = reader.row().line;
  }
  return 0;
}
