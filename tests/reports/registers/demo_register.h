#pragma once

#include "demo_work.h"
#include "tool_register.h"

namespace steadyturn::test {

inline RegisterEntry demoEntry(const char* id, const char* state) {
  RegisterEntry entry{.tool = {}, .lastCheck = on("2025-11-03"), .due = on("2026-11-03"), .state = state};
  auto& tool = entry.tool;
  tool.id = id;
  tool.description = "Wheel bay, long handle";
  tool.maker = "Harbourside Tools";
  tool.serial = "HT-20419";
  tool.kind = {ToolType::Setting, ToolClass::A};
  tool.minimum = 20;
  tool.maximum = 100;
  return entry;
}

}  // namespace steadyturn::test
