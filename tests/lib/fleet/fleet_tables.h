// The recorded fleets of tests/data/reference/fleet_record.csv as sums, by the name of the set.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "reference_table.h"
#include "slope_sums.h"

namespace steadyturn::testing {

inline std::map<std::string, std::vector<SlopeSums>> recordedFleets() {
  struct Tool {
    std::vector<double> x, y;
    std::vector<std::size_t> sizes;
  };
  std::map<std::string, std::vector<Tool>> tools;
  const auto table = ReferenceTable::load("fleet_record.csv");
  std::string set, tool, segment;
  for (std::size_t row = 0; row < table.rows(); ++row) {
    auto& fleet = tools[table.text(row, "set")];
    const bool sameTool = table.text(row, "set") == set && table.text(row, "tool") == tool;
    if (!sameTool) fleet.emplace_back();
    if (!sameTool || table.text(row, "segment") != segment) fleet.back().sizes.push_back(0);
    set = table.text(row, "set");
    tool = table.text(row, "tool");
    segment = table.text(row, "segment");
    fleet.back().x.push_back(table.figure(row, "x").value);
    fleet.back().y.push_back(table.figure(row, "y").value);
    ++fleet.back().sizes.back();
  }
  std::map<std::string, std::vector<SlopeSums>> sums;
  for (const auto& [name, fleet] : tools) {
    for (const Tool& one : fleet) sums[name].push_back(sumsOf(one.x, one.y, one.sizes));
  }
  return sums;
}

}  // namespace steadyturn::testing
