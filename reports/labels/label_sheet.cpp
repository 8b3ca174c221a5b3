#include "label_sheet.h"

#include <fmt/format.h>

#include <cmath>
#include <utility>

namespace steadyturn {
namespace {

constexpr double largestPageMm = 1000;
constexpr int mostPlaces = 1000;

class Faults {
 public:
  void unless(bool right, std::string_view field, double found, std::string accepted) {
    if (right) return;
    problems_.push_back({.field = fmt::format("sheet.{}", field),
                         .found = fmt::format("{:.6g}", found),
                         .accepted = std::move(accepted)});
  }
  bool none() const { return problems_.empty(); }
  Result<void> result() && {
    if (none()) return {};
    return tl::unexpected(std::move(problems_));
  }

 private:
  Problems problems_;
};

// Comparisons are written so that NaN fails them.
void checkLengths(const LabelSheet& sheet, Faults& faults) {
  for (const auto& [field, length] :
       {std::pair{"pageWidth", sheet.pageWidth}, std::pair{"pageHeight", sheet.pageHeight}}) {
    faults.unless(length > 0 && length <= largestPageMm, field, length,
                  fmt::format("more than 0 mm, at most {} mm", largestPageMm));
  }
  for (const auto& [field, length] : {std::pair{"left", sheet.left}, std::pair{"top", sheet.top},
                                      std::pair{"right", sheet.right}, std::pair{"bottom", sheet.bottom},
                                      std::pair{"columnGap", sheet.columnGap}, std::pair{"rowGap", sheet.rowGap}}) {
    faults.unless(length >= 0 && std::isfinite(length), field, length, "0 mm or more");
  }
}

void checkCounts(const LabelSheet& sheet, Faults& faults) {
  for (const auto& [field, count] : {std::pair{"columns", sheet.columns}, std::pair{"rows", sheet.rows}}) {
    faults.unless(count >= 1 && count <= mostPlaces, field, count, fmt::format("1 to {}", mostPlaces));
  }
}

}  // namespace

LabelPlace LabelSheet::place(int place) const {
  const double width = (pageWidth - left - right - (columns - 1) * columnGap) / columns;
  const double height = (pageHeight - top - bottom - (rows - 1) * rowGap) / rows;
  const int row = place / columns;
  return {.left = left + (place % columns) * (width + columnGap),
          .top = top + row * (height + rowGap),
          .width = width,
          .height = height};
}

LabelSheet singleLabel(double widthMm, double heightMm) { return {.pageWidth = widthMm, .pageHeight = heightMm}; }

LabelSheet a4Labels() {
  return {.pageWidth = 210,
          .pageHeight = 297,
          .left = 9,
          .top = 16.5,
          .right = 9,
          .bottom = 16.5,
          .columns = 3,
          .rows = 8,
          .cutLines = true};
}

Result<void> checkSheet(const LabelSheet& sheet) {
  Faults faults;
  checkLengths(sheet, faults);
  checkCounts(sheet, faults);
  if (faults.none()) {
    const auto place = sheet.place(0);
    faults.unless(
        place.width >= leastLabelWidthMm, "columns", sheet.columns,
        fmt::format("labels at least {} mm wide; these would be {:.4g} mm", leastLabelWidthMm, place.width));
    faults.unless(
        place.height >= leastLabelHeightMm, "rows", sheet.rows,
        fmt::format("labels at least {} mm tall; these would be {:.4g} mm", leastLabelHeightMm, place.height));
    faults.unless(sheet.skip >= 0 && sheet.skip < sheet.places(), "skip", sheet.skip,
                  fmt::format("0 to {}", sheet.places() - 1));
  }
  return std::move(faults).result();
}

}  // namespace steadyturn
