// A report as its builder decided it: facts, tables of typed cells, charts, paragraphs, places to sign. Writers only
// spell it.
#pragma once

#include <string>
#include <variant>
#include <vector>

#include "chart_model.h"

namespace steadyturn {

struct Fact {
  std::string name;
  std::string value;
};

struct FactsBlock {
  std::string heading;
  std::vector<Fact> facts;
};

enum class Align { Left, Right };
struct Column {
  std::string heading;  // with its unit: "mean deviation, %"
  Align align = Align::Left;
};

struct TableBlock {
  std::string heading;
  std::vector<Column> columns;
  std::vector<std::vector<std::string>> rows;  // each as wide as columns
};

struct ParagraphBlock {
  std::string heading;  // may be empty
  std::string text;
};

struct ChartBlock {
  ChartModel chart;
};

// Long words that a machine compares and few people read: small, two in a row.
struct FinePrintBlock {
  std::string text;
  std::vector<std::string> lines;
};

struct SignatureBlock {
  std::vector<std::string> roles;  // "Checked by", "Authorised by"
};

using Block = std::variant<FactsBlock, TableBlock, ParagraphBlock, ChartBlock, FinePrintBlock, SignatureBlock>;

struct ReportDocument {
  std::string title;
  std::string number;  // unique; stands on each page
  std::string issuer;  // the shop, and where
  std::string issued;  // date of issue
  std::string language = "en";
  std::string code{};  // of the symbol beside the title, for a camera; "" for none
  std::vector<Block> blocks;
};

}  // namespace steadyturn
