// A small shop with a tool and a reference, and checks of it that are each their own.
#pragma once

#include <fstream>
#include <string>

#include "shop.h"

namespace steadyturn {

inline const Date firstDay = Date(std::chrono::days(18000));

inline CheckDraft checkOfDay(int day) {
  CheckDraft draft;
  draft.tool = "T1";
  draft.reference = "R1";
  draft.by = "Nora";
  draft.date = firstDay + std::chrono::days(day);
  for (const char* target : {"20", "60", "100"}) {
    draft.points.push_back({.target = target, .readings = {target, target, target, target, target}});
  }
  return draft;
}

inline void fill(Shop& shop) {
  Tool tool;
  tool.id = "T1";
  tool.kind = {ToolType::Setting, ToolClass::A};
  tool.minimum = 20;
  tool.maximum = 100;
  tool.resolution = 1;
  (void)shop.addTool(tool);
  Reference reference;
  reference.id = "R1";
  reference.expandedUncertaintyPercent = 0.4;
  (void)shop.addReference(reference);
}

// A file of so many checks to be imported.
inline void writeChecks(const std::string& path, int checks) {
  std::ofstream out(path);
  out << "tool,date,phase,target,reading,unit,reference,by\n";
  for (int day = 0; day < checks; ++day) {
    for (const char* target : {"20", "60", "100"}) {
      out << "T1," << writeDate(firstDay + std::chrono::days(day)) << ",as_found," << target << ',' << target
          << ",N.m,R1,Nora\n";
    }
  }
}

}  // namespace steadyturn
