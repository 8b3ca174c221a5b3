// CSV text as a source of bytes that come in pieces of a chosen size.
#pragma once

#include <algorithm>
#include <string>
#include <utility>
#include <vector>

#include "csv_reader.h"

namespace steadyturn {

inline CsvReader::Source inPieces(std::string text, std::size_t piece = 1 << 16) {
  return [text = std::move(text), piece, at = std::size_t{0}](char* into, std::size_t room) mutable {
    const std::size_t taken = text.copy(into, std::min(room, piece), at);
    at += taken;
    return taken;
  };
}

using Table = std::vector<std::vector<std::string>>;

struct ReadCsv {
  std::vector<std::string> header;
  Table rows;
  std::vector<std::size_t> lines;  // of the rows
  Problems problems;
};

// Everything that can be read of it, and everything that is wrong with it.
inline ReadCsv readAll(CsvReader::Source source) {
  CsvReader reader(std::move(source));
  ReadCsv all;
  auto header = reader.header();
  if (!header) {
    all.problems = header.error();
    return all;
  }
  all.header = *header;
  for (;;) {
    switch (reader.next()) {
      case CsvReader::Step::Row:
        all.rows.emplace_back(reader.row().cells.begin(), reader.row().cells.end());
        all.lines.push_back(reader.row().line);
        break;
      case CsvReader::Step::Bad:
        all.problems.push_back(reader.problem());
        break;
      case CsvReader::Step::End:
        return all;
    }
  }
}

inline ReadCsv readAll(std::string text) { return readAll(inPieces(std::move(text))); }

}  // namespace steadyturn
