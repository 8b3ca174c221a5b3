#include "readings_file.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

#include "csv_reader.h"

namespace steadyturn {
namespace {

constexpr std::array<std::string_view, 3> columnsReadings{"target", "reading", "unit"};
constexpr std::string_view columnNames = "the columns target, reading, unit";
constexpr std::size_t mostProblems = 100;

using Places = std::array<std::size_t, columnsReadings.size()>;

Result<Places> placesOf(const std::vector<std::string>& header) {
  Problems problems;
  for (const std::string& name : header) {
    if (std::ranges::find(columnsReadings, name) != columnsReadings.end()) continue;
    problems.push_back(
        {.field = name, .found = "an unknown column", .accepted = std::string(columnNames), .line = 1});
  }
  Places places{};
  for (std::size_t i = 0; i < columnsReadings.size(); ++i) {
    const auto count = std::ranges::count(header, columnsReadings[i]);
    if (count != 1) {
      problems.push_back({.field = std::string(columnsReadings[i]),
                          .found = count == 0 ? "no such column" : "a column that stands there twice",
                          .accepted = std::string(columnNames),
                          .line = 1});
    }
    places[i] = static_cast<std::size_t>(std::ranges::find(header, columnsReadings[i]) - header.begin());
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return places;
}

class Gathering {
 public:
  explicit Gathering(bool decimalComma) : decimalComma_(decimalComma) {}

  void take(std::size_t line, std::string_view target, std::string_view reading, std::string_view unit) {
    line_ = line;
    const std::string targetText = number(target, columnsReadings[0]);
    const std::string readingText = number(reading, columnsReadings[1]);
    takeUnit(unit);
    auto point = std::ranges::find(typed_.points, targetText, &DraftPoint::target);
    if (point == typed_.points.end()) point = typed_.points.insert(point, {.target = targetText, .readings = {}});
    point->readings.push_back(readingText);
  }

  void refuse(Problem problem) { problems_.push_back(std::move(problem)); }

  Result<TypedReadings> result() {
    if (problems_.empty()) return std::move(typed_);
    if (problems_.size() > mostProblems) {
      const std::size_t more = problems_.size() - mostProblems;
      problems_.resize(mostProblems);
      problems_.push_back(
          {.field = "readings", .found = std::to_string(more) + " more", .accepted = "rows without a problem"});
    }
    return tl::unexpected(std::move(problems_));
  }

 private:
  // The text as typed, with '.' as the decimal mark: how the shop keeps it.
  std::string number(std::string_view typed, std::string_view column) {
    if (const auto value = parseTorqueNumber(typed, column, decimalComma_); !value) {
      for (Problem problem : value.error()) {
        problem.line = line_;
        refuse(std::move(problem));
      }
    }
    std::string text(typed);
    if (decimalComma_) std::ranges::replace(text, ',', '.');
    return text;
  }

  void takeUnit(std::string_view typed) {
    const auto unit = parseUnit(typed);
    if (!unit) {
      refuse({.field = "unit", .found = std::string(typed), .accepted = std::string(acceptedUnits()), .line = line_});
      return;
    }
    if (!hasUnit_) typed_.unit = *unit;
    hasUnit_ = true;
    if (*unit == typed_.unit) return;
    refuse({.field = "unit",
            .found = std::string(typed),
            .accepted = std::string(unitCode(typed_.unit)) + ", as in the rows before: a check has one unit",
            .line = line_});
  }

  bool decimalComma_;
  bool hasUnit_ = false;
  std::size_t line_ = 0;
  TypedReadings typed_;
  Problems problems_;
};

Result<TypedReadings> gather(CsvReader& reader, bool decimalComma) {
  const auto header = reader.header();
  if (!header) return tl::unexpected(header.error());
  const auto places = placesOf(*header);
  if (!places) return tl::unexpected(places.error());
  Gathering gathering(decimalComma);
  for (auto step = reader.next(); step != CsvReader::Step::End; step = reader.next()) {
    if (step == CsvReader::Step::Bad) {
      gathering.refuse(reader.problem());
      continue;
    }
    const auto cells = reader.row().cells;
    gathering.take(reader.row().line, cells[(*places)[0]], cells[(*places)[1]], cells[(*places)[2]]);
  }
  return gathering.result();
}

Result<TypedReadings> unreadable(const std::string& path, const std::string& why) {
  return refuse(
      {.kind = ProblemKind::FileMissing, .field = path, .found = why, .accepted = "a CSV file that can be read"});
}

}  // namespace

Result<TypedReadings> readReadings(const std::string& path, bool decimalComma) {
  std::error_code trouble;
  if (std::filesystem::is_directory(path, trouble)) return unreadable(path, "a directory");
  errno = 0;
  std::ifstream file(path, std::ios::binary);
  if (!file) return unreadable(path, std::strerror(errno));
  CsvReader reader([&file](char* into, std::size_t room) {
    file.read(into, static_cast<std::streamsize>(room));
    return static_cast<std::size_t>(file.gcount());
  });
  return gather(reader, decimalComma);
}

}  // namespace steadyturn
