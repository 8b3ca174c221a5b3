// One row of a file, asked for what each column should hold. What is wrong goes to the file's problems with line and
// column; the answer is then empty and sound() false.
#pragma once

#include <optional>
#include <span>
#include <string>
#include <string_view>

#include "columns.h"
#include "csv_reader.h"
#include "date.h"
#include "problem_list.h"
#include "unit.h"

namespace steadyturn {

class ImportRow {
 public:
  ImportRow(std::span<const FileColumn> columns, ColumnPlaces places, bool decimalComma, ProblemList& problems)
      : columns_(columns), places_(std::move(places)), decimalComma_(decimalComma), problems_(problems) {}

  void show(const CsvRow& row) {
    row_ = row;
    sound_ = true;
  }

  std::size_t line() const { return row_.line; }
  bool sound() const { return sound_; }
  void refuse(std::size_t column, std::string_view found, std::string accepted,
              ProblemKind kind = ProblemKind::BadInput);
  // Problems that name columns but no line.
  void refuse(const Problems& problems);

  // The cell as it stands in the file; empty where the file leaves the column out.
  std::string_view raw(std::size_t column) const {
    const auto place = places_[column];
    return place ? row_.cells[*place] : std::string_view();
  }
  // The same without blanks around it: codes, numbers and dates.
  std::string_view code(std::size_t column) const;
  // What a person typed: without a formula guard, line breaks as LF, in the normal form that the shop keeps.
  std::string text(std::size_t column) const;

  double number(std::size_t column);
  std::optional<double> optionalNumber(std::size_t column);
  std::optional<int> optionalWhole(std::size_t column);
  // A torque above 0, and its digits as typed, '.' as the decimal mark.
  double torque(std::size_t column);
  std::string typedNumber(std::size_t column) const;
  Date date(std::size_t column);
  std::optional<Date> optionalDate(std::size_t column);
  Unit unit(std::size_t column);
  std::optional<bool> flag(std::size_t column);

  // What `parsed` holds; its problems are the row's.
  template <typename T>
  T valueOf(Result<T> parsed) {
    if (parsed) return std::move(*parsed);
    refuse(parsed.error());
    return T{};
  }

 private:
  std::string name(std::size_t column) const { return std::string(columns_[column].name); }
  Problem withCommaHint(Problem problem) const;

  std::span<const FileColumn> columns_;
  ColumnPlaces places_;
  bool decimalComma_;
  ProblemList& problems_;
  CsvRow row_;
  bool sound_ = true;
};

}  // namespace steadyturn
