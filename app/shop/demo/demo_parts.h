// The depot's parts, as plain values.
#pragma once

#include <vector>

#include "job_record.h"
#include "records.h"
#include "shop_views.h"

namespace steadyturn {

// The day that counts as today in the depot.
inline constexpr Date demoToday = std::chrono::sys_days(std::chrono::year(2026) / 11 / 20);

// How a wrench of the depot really behaves; the checks are drawn from it.
struct DemoTool {
  Tool tool;
  double biasPercent = 0;  // true mean deviation on the first day
  double driftPercentPerYear = 0;
  double checkScatterPercent = 0;  // from one check to the next
  double pullScatterPercent = 0;   // from one pull to the next
  Date firstCheck{};
  Date lastCheck{};                // no check after this day
  int cadenceDays = 0;             // between checks; 0: one check only, on firstCheck
  double adjustBeyondPercent = 0;  // as found beyond this: adjusted and checked as left; 0: never
};

struct StatusEvent {
  std::string tool;
  ToolStatus status;
  std::string reason;
  Date date;
};

std::vector<DemoTool> demoTools();
std::vector<StatusEvent> demoStatusEvents();
std::vector<Reference> demoReferences();
std::vector<Fastener> demoFasteners();
std::vector<ServiceList> demoServices(const std::vector<Fastener>& fasteners);
// The one revision that nobody has approved yet.
inline constexpr std::string_view demoUnreleased = "GR-10";
// Drawn from the tools' behaviour; by date.
std::vector<CheckDraft> demoChecks(const std::vector<DemoTool>& tools);
// By date.
std::vector<Tightening> demoTightenings(const std::vector<Fastener>& fasteners);

}  // namespace steadyturn
