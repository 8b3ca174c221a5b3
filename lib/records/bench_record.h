// What the bench keeps beside checks: set-ups of tool models, and what a reference is known to cover.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "bench_setup.h"
#include "records.h"

namespace steadyturn {

// Tools that are built alike share a set-up (ISO 6789-2:2017: taken once for a model).
struct ToolModel {
  std::string maker, description;
  ToolKind kind;
  StatedTorque maximum;
  bool operator==(const ToolModel&) const = default;
};
ToolModel modelOf(const Tool& tool);

using TypedSeries = std::vector<std::vector<std::string>>;  // readings as typed, series by series

struct BenchSetup {
  std::int64_t id = 0;  // given by the store
  ToolModel model;
  Date date{};
  std::string by;
  std::string reference;                                  // empty: spans that were typed, not measured
  StatedTorque target;                                    // the set-point of the runs, the lowest of the model
  std::array<TypedSeries, allSetupRuns.size()> readings;  // by run, in the target's unit; empty: not taken
  VariationSpans spans;                                   // stored facts, %
  std::string basis;  // where the spans without readings come from; empty when every span is measured
  std::string note;

  const TypedSeries& readingsOf(SetupRun run) const { return readings[static_cast<std::size_t>(run)]; }
  bool measured(SetupRun run) const { return !readingsOf(run).empty(); }
};

struct ReferenceRange {
  double low = 0, high = 0;
  Unit unit = Unit::NewtonMetre;
  bool operator==(const ReferenceRange&) const = default;
};

}  // namespace steadyturn
