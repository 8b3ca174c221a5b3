// Types and classes of hand torque tools, and the deviation each is permitted (ISO 6789-1:2017).
#pragma once

#include <string>
#include <string_view>

#include "torque.h"

namespace steadyturn {

enum class ToolType { Indicating, Setting };  // Type I, Type II
enum class ToolClass { A, B, C, D, E, F, G };

struct ToolKind {
  ToolType type = ToolType::Setting;
  ToolClass cls = ToolClass::A;
  bool operator==(const ToolKind&) const = default;
};

// Whether ISO 6789-1 has this class in this type: Type I has A to E, Type II A to G. Everything below that
// takes a ToolKind REQUIRES it.
bool isDefined(ToolKind kind);

// Reads "I"/"II" and "A".."G" (any case; "1", "2" too). Problems name "type" and "class".
Result<ToolKind> parseToolKind(std::string_view type, std::string_view cls);
std::string_view writeType(ToolType type);  // "I", "II"
std::string_view writeClass(ToolClass cls);
// "adjustable wrench, graduated": what the class is, in words (ISO 6789-1:2017, 4).
std::string_view describe(ToolKind kind);

// What the type and class ask of a check. One table holds all of it, with its source.
struct KindRules {
  double permissibleToTenNewtonMetre;     // %, maximum ≤ 10 N·m
  double permissibleAboveTenNewtonMetre;  // %, maximum > 10 N·m
  int readings;                           // at each set-point
  int exercisePulls;                      // uncounted pulls at the maximum before the first reading
  bool fixedValue;                        // checked at its one value only (Type II B, E)
  bool graduated;                         // a person can set or read a value on the tool itself
  std::string_view source;
};
const KindRules& rulesFor(ToolKind kind);

// ± % that every reading must keep, from kind and maximum (ISO 6789-1:2017).
double permissibleDeviationPercent(ToolKind kind, StatedTorque maximum);

}  // namespace steadyturn
