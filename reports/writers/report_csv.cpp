#include <fmt/format.h>

#include <algorithm>
#include <initializer_list>

#include "csv_writer.h"
#include "whole_write.h"
#include "writers.h"

namespace steadyturn {
namespace {

bool isDigit(char c) { return c >= '0' && c <= '9'; }

std::string_view withoutDigits(std::string_view text) {
  return text.substr(std::min(
      text.size(), static_cast<std::size_t>(std::find_if_not(text.begin(), text.end(), isDigit) - text.begin())));
}

// A plain decimal number, which no spreadsheet runs: "-1.05", "+2", "1e-9".
bool isNumber(std::string_view text) {
  if (!text.empty() && (text.front() == '+' || text.front() == '-')) text.remove_prefix(1);
  const auto afterWhole = withoutDigits(text);
  if (afterWhole.size() == text.size()) return false;
  auto rest = afterWhole;
  if (!rest.empty() && rest.front() == '.') rest = withoutDigits(rest.substr(1));
  if (rest.empty()) return true;
  if (rest.front() != 'e' && rest.front() != 'E') return false;
  rest.remove_prefix(1);
  if (!rest.empty() && (rest.front() == '+' || rest.front() == '-')) rest.remove_prefix(1);
  return !rest.empty() && withoutDigits(rest).empty();
}

class CsvRows {
 public:
  template <typename Cells>
  void add(const Cells& cells) {
    for (const auto& text : cells) addCell(text);
    writer_.endRow();
  }
  void add(std::initializer_list<std::string_view> cells) { add<std::initializer_list<std::string_view>>(cells); }
  void blank() { text_ += "\r\n"; }
  const std::string& text() const { return text_; }

 private:
  void addCell(std::string_view text) {
    if (isNumber(text)) {
      writer_.plain(text);
    } else {
      writer_.text(text);
    }
  }

  std::string text_;
  CsvWriter writer_{text_};
};

void addHeading(CsvRows& rows, const std::string& heading) {
  if (!heading.empty()) rows.add({heading});
}

void spell(CsvRows& rows, const FactsBlock& block) {
  addHeading(rows, block.heading);
  for (const auto& fact : block.facts) rows.add({fact.name, fact.value});
}

void spell(CsvRows& rows, const TableBlock& block) {
  addHeading(rows, block.heading);
  std::vector<std::string> header;
  for (const auto& column : block.columns) header.push_back(column.heading);
  rows.add(header);
  for (const auto& row : block.rows) rows.add(row);
}

void spell(CsvRows& rows, const ParagraphBlock& block) {
  addHeading(rows, block.heading);
  rows.add({block.text});
}

void spell(CsvRows& rows, const FinePrintBlock& block) {
  rows.add({block.text});
  for (const auto& line : block.lines) rows.add({line});
}

void spell(CsvRows& rows, const ChartBlock& block) {
  const auto& chart = block.chart;
  rows.add({chart.title});
  rows.add({chart.subtitle});
  for (const auto& line : chart.horizontals) rows.add({line.name, fmt::format("{}", line.value)});
  for (const auto& line : chart.verticals) rows.add({line.name, writeDate(line.date)});
  rows.add({"series", "date", chart.valueAxis, "expanded uncertainty, %"});
  for (const auto& series : chart.points) {
    for (const auto& point : series.points) {
      rows.add({series.name, writeDate(point.date), fmt::format("{}", point.value),
                point.uncertainty ? fmt::format("{}", *point.uncertainty) : std::string()});
    }
  }
}

void spell(CsvRows& rows, const SignatureBlock& block) {
  for (const auto& role : block.roles) rows.add({role, ""});
}

}  // namespace

Result<void> writeCsv(const ReportDocument& report, QIODevice& out) {
  CsvRows rows;
  rows.add({"title", report.title});
  rows.add({"number", report.number});
  rows.add({"issued by", report.issuer});
  rows.add({"issued on", report.issued});
  for (const auto& block : report.blocks) {
    rows.blank();
    std::visit([&](const auto& one) { spell(rows, one); }, block);
  }
  return writeWhole(out, QByteArray::fromStdString(rows.text()));
}

}  // namespace steadyturn
