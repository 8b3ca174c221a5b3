#include "tool_kind.h"

#include <algorithm>
#include <stdexcept>

namespace steadyturn {
namespace {

constexpr std::string_view standard = "ISO 6789-1:2017";
// Some readings of the standard say 5 here. 10 is the careful one: it never asks for less.
constexpr std::string_view readingsOpen = "ISO 6789-1:2017; number of readings (10, or 5) not confirmed";

struct KindRow {
  ToolKind kind;
  std::string_view words;
  KindRules rules;
};

using enum ToolType;
using enum ToolClass;

// Everything taken from ISO 6789-1:2017 about a kind of tool. The text of the standard was not at hand: an
// instrument's instruction sheet confirms Type II class A (± 6 % to 10 N·m, ± 4 % above, five uncounted
// releases at the maximum); the other rows are from memory.
constexpr KindRow rows[]{
    {{Indicating, A}, "torsion or flexion bar wrench", {6, 6, 5, 1, false, true, standard}},
    {{Indicating, B}, "rigid housing, with scale, dial or display", {6, 4, 5, 1, false, true, standard}},
    {{Indicating, C}, "rigid housing, electronic measurement", {6, 4, 5, 1, false, true, standard}},
    {{Indicating, D}, "screwdriver with scale, dial or display", {6, 6, 5, 1, false, true, standard}},
    {{Indicating, E}, "screwdriver, electronic measurement", {6, 4, 5, 1, false, true, standard}},
    {{Setting, A}, "adjustable wrench, graduated", {6, 4, 5, 5, false, true, standard}},
    {{Setting, B}, "wrench with fixed adjustment", {6, 4, 10, 5, true, false, readingsOpen}},
    {{Setting, C}, "adjustable wrench, not graduated", {6, 4, 10, 5, false, false, readingsOpen}},
    {{Setting, D}, "adjustable screwdriver, graduated", {6, 6, 5, 5, false, true, standard}},
    {{Setting, E}, "screwdriver with fixed adjustment", {6, 6, 10, 5, true, false, readingsOpen}},
    {{Setting, F}, "adjustable screwdriver, not graduated", {6, 6, 10, 5, false, false, readingsOpen}},
    {{Setting, G}, "adjustable flexion bar wrench, graduated", {6, 6, 5, 5, false, true, standard}},
};

const KindRow* find(ToolKind kind) {
  const auto row = std::ranges::find(rows, kind, &KindRow::kind);
  return row == std::ranges::end(rows) ? nullptr : row;
}

const KindRow& rowOf(ToolKind kind) {
  const KindRow* row = find(kind);
  if (row == nullptr) throw std::logic_error("a kind of tool that ISO 6789-1 does not have");
  return *row;
}

std::string upperCase(std::string_view text) {
  std::string upper(text);
  for (char& letter : upper) {
    if (letter >= 'a' && letter <= 'z') letter = static_cast<char>(letter - 'a' + 'A');
  }
  return upper;
}

}  // namespace

bool isDefined(ToolKind kind) { return find(kind) != nullptr; }

Result<ToolKind> parseToolKind(std::string_view type, std::string_view cls) {
  Problems problems;
  ToolKind kind;
  const std::string typeText = upperCase(type);
  const bool indicating = typeText == "I" || typeText == "1";
  if (!indicating && typeText != "II" && typeText != "2") {
    problems.push_back({.field = "type", .found = std::string(type), .accepted = "I or II"});
  }
  kind.type = indicating ? Indicating : Setting;

  const std::string classText = upperCase(cls);
  const char last = problems.empty() && indicating ? 'E' : 'G';
  if (classText.size() == 1 && classText.front() >= 'A' && classText.front() <= last) {
    kind.cls = static_cast<ToolClass>(classText.front() - 'A');
  } else {
    problems.push_back({.field = "class", .found = std::string(cls), .accepted = std::string("A to ") + last});
  }
  if (!problems.empty()) return tl::unexpected(std::move(problems));
  return kind;
}

std::string_view writeType(ToolType type) { return type == Indicating ? "I" : "II"; }

std::string_view writeClass(ToolClass cls) {
  return std::string_view("ABCDEFG").substr(static_cast<std::size_t>(cls), 1);
}

std::string_view describe(ToolKind kind) { return rowOf(kind).words; }

const KindRules& rulesFor(ToolKind kind) { return rowOf(kind).rules; }

double permissibleDeviationPercent(ToolKind kind, StatedTorque maximum) {
  const KindRules& rules = rulesFor(kind);
  constexpr double border = 10;  // N·m
  return maximum.torque().newtonMetres() <= border ? rules.permissibleToTenNewtonMetre
                                                   : rules.permissibleAboveTenNewtonMetre;
}

}  // namespace steadyturn
