#include "columns.h"

#include <algorithm>

namespace steadyturn {
namespace {

std::string namesOf(std::span<const FileColumn> columns) {
  std::string names;
  for (const FileColumn& column : columns) {
    if (!names.empty()) names += ", ";
    names += column.name;
  }
  return names;
}

}  // namespace

Result<ColumnPlaces> placeColumns(std::span<const FileColumn> columns, std::span<const std::string> header) {
  Problems problems;
  ColumnPlaces places(columns.size());
  for (std::size_t place = 0; place < header.size(); ++place) {
    const std::string& name = header[place];
    const auto column = std::ranges::find(columns, name, &FileColumn::name);
    if (column == columns.end()) {
      problems.push_back(
          {.field = name, .found = "an unknown column", .accepted = "the columns " + namesOf(columns), .line = 1});
      continue;
    }
    auto& known = places[static_cast<std::size_t>(column - columns.begin())];
    if (known)
      problems.push_back(
          {.field = name, .found = "a column that stands there twice", .accepted = "each column once", .line = 1});
    known = place;
  }
  for (std::size_t i = 0; i < columns.size(); ++i) {
    if (!columns[i].needed || places[i]) continue;
    problems.push_back({.field = std::string(columns[i].name),
                        .found = "no such column",
                        .accepted = "a header with this column; the columns are " + namesOf(columns),
                        .line = 1});
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return places;
}

}  // namespace steadyturn
