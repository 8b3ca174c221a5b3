// The register of a shop's torque tools: what there is, within what limits, when each was and will be checked.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "records.h"
#include "report_document.h"

namespace steadyturn {

struct RegisterEntry {
  Tool tool{};
  std::optional<Date> lastCheck{}, due{};
  std::string state{};  // in words: "ready", "held"
};

struct ToolRegisterData {
  std::string shopName{}, shopPlace{};
  Date today{};
  int intervalDays = 365;                // the shop's, for tools without one of their own
  std::vector<RegisterEntry> entries{};  // in the order to be printed
};

// REQUIRES: every tool's kind defined.
ReportDocument buildToolRegister(const ToolRegisterData& data);

}  // namespace steadyturn
