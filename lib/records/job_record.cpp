#include "job_record.h"

#include <fmt/format.h>

namespace steadyturn {

std::vector<std::string> missingOf(const JobLine& line) {
  if (line.tightenings.empty()) return {"not tightened"};
  // The newest says how the joint was left.
  const Tightening& done = line.tightenings.back();
  std::vector<std::string> missing;
  const auto steps = static_cast<int>(line.spec.steps().size());
  if (steps > 1 && done.stagesDone.value_or(0) < steps) {
    missing.push_back(fmt::format("{} of {} stages", done.stagesDone.value_or(0), steps));
  }
  if (!line.spec.seatCheck.empty() && !done.seatChecked.value_or(false)) missing.emplace_back("seat not seen");
  if (line.spec.renew.value_or(false) && !done.sealRenewed.value_or(false)) missing.emplace_back("seal not renewed");
  return missing;
}

}  // namespace steadyturn
