#include "reference_table.h"

#include <algorithm>
#include <charconv>
#include <cmath>
#include <fstream>
#include <sstream>
#include <stdexcept>

namespace steadyturn::testing {
namespace {

[[noreturn]] void refuse(std::string_view table, std::string_view what) {
  throw std::runtime_error(std::string(table) + ": " + std::string(what));
}

std::vector<std::string> cellsOf(const std::string& line) {
  std::vector<std::string> cells;
  std::size_t begin = 0;
  for (std::size_t comma = line.find(','); comma != std::string::npos; comma = line.find(',', begin)) {
    cells.push_back(line.substr(begin, comma - begin));
    begin = comma + 1;
  }
  cells.push_back(line.substr(begin));
  return cells;
}

// The rest of the line after "# source: "; empty when it begins otherwise.
std::string afterKey(std::string_view line, std::string_view key) {
  if (!line.starts_with(key)) return {};
  line.remove_prefix(key.size());
  line.remove_prefix(std::min(line.find_first_not_of(' '), line.size()));
  return std::string(line);
}

// Whether `digits` is "as printed" (absent count), "N decimals" or "N significant".
bool readDigits(std::string_view digits, int& count, std::string_view& what) {
  if (digits == "as printed") {
    what = digits;
    return true;
  }
  const auto [end, error] = std::from_chars(digits.data(), digits.data() + digits.size(), count);
  what = digits.substr(static_cast<std::size_t>(end - digits.data()));
  return error == std::errc() && count >= 0 && (what == " decimals" || what == " significant");
}

// The power of ten of the last digit that a number's text shows: −2 for "26.27", −14 for "1.5e-13".
int lastDigitShown(std::string_view text) {
  int exponent = 0;
  if (const std::size_t e = text.find_first_of("eE"); e != std::string_view::npos) {
    std::string_view power = text.substr(e + 1);
    if (power.starts_with('+')) power.remove_prefix(1);
    std::from_chars(power.data(), power.data() + power.size(), exponent);
    text = text.substr(0, e);
  }
  const std::size_t point = text.find('.');
  return point == std::string_view::npos ? exponent : exponent - static_cast<int>(text.size() - point - 1);
}

}  // namespace

ReferenceTable ReferenceTable::load(std::string_view name) {
  const std::string path = std::string(STEADYTURN_TEST_DATA) + "/reference/" + std::string(name);
  std::ifstream file(path, std::ios::binary);
  if (!file) refuse(name, "can't be read at " + path);
  std::ostringstream text;
  text << file.rdbuf();
  return read(text.str(), name);
}

ReferenceTable ReferenceTable::read(std::string_view text, std::string_view name) {
  ReferenceTable table;
  table.name_ = name;
  std::istringstream lines{std::string(text)};
  std::string line;
  if (std::getline(lines, line)) table.source_ = afterKey(line, "# source:");
  if (table.source_.empty()) refuse(name, "the first line must be '# source: …'");
  if (std::getline(lines, line)) table.digits_ = afterKey(line, "# digits:");
  int count = 0;
  std::string_view what;
  if (!readDigits(table.digits_, count, what)) {
    refuse(name, "the second line must be '# digits: as printed', 'N decimals' or 'N significant'");
  }

  while (std::getline(lines, line)) {
    if (line.empty() || line.starts_with('#')) continue;
    std::vector<std::string> cells = cellsOf(line);
    if (table.columns_.empty()) {
      table.columns_ = std::move(cells);
    } else if (cells.size() != table.columns_.size()) {
      refuse(name, "a row has not as many cells as the header: " + line);
    } else {
      table.rows_.push_back(std::move(cells));
    }
  }
  if (table.rows_.empty()) refuse(name, "no rows");
  return table;
}

const std::string& ReferenceTable::text(std::size_t row, std::string_view column) const {
  const auto found = std::ranges::find(columns_, column);
  if (found == columns_.end()) refuse(name_, "no column " + std::string(column));
  return rows_.at(row)[static_cast<std::size_t>(found - columns_.begin())];
}

ReferenceFigure ReferenceTable::figure(std::size_t row, std::string_view column) const {
  const std::string& cell = text(row, column);
  ReferenceFigure figure{};
  const auto [end, error] = std::from_chars(cell.data(), cell.data() + cell.size(), figure.value);
  if (error != std::errc() || end != cell.data() + cell.size() || !std::isfinite(figure.value)) {
    refuse(name_, "not a number in column " + std::string(column) + ": '" + cell + "'");
  }
  int count = 0;
  std::string_view what;
  readDigits(digits_, count, what);
  int lastDigit = lastDigitShown(cell);
  if (what == " decimals") lastDigit = -count;
  if (what == " significant" && figure.value != 0) {
    lastDigit = static_cast<int>(std::floor(std::log10(std::abs(figure.value)))) - count + 1;
  }
  figure.tolerance = 0.5 * std::pow(10.0, lastDigit);
  return figure;
}

}  // namespace steadyturn::testing
