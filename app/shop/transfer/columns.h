// The columns of a kind of file, and where a given file has them.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

#include "problem.h"

namespace steadyturn {

struct FileColumn {
  std::string_view name;
  bool needed = false;
};

// For each column, its place in a row of the file; nothing for an optional one that the file leaves out.
using ColumnPlaces = std::vector<std::optional<std::size_t>>;

// Problems: a column that is not known, one that stands there twice, a needed one that is missing.
Result<ColumnPlaces> placeColumns(std::span<const FileColumn> columns, std::span<const std::string> header);

}  // namespace steadyturn
