#include <algorithm>

#include "inside.h"
#include "reference_fitness.h"
#include "set_points.h"
#include "setup_recording.h"
#include "writing.h"

namespace steadyturn {

Result<BenchSetupPlan> Shop::planBenchSetup(const std::string& id) const {
  const auto found = tool(id);
  if (!found) return tl::unexpected(found.error());
  const auto setPoints =
      proposeSetPoints(found->kind, found->minimumTorque(), found->maximumTorque(), found->resolutionTorque());
  BenchSetupPlan plan{.model = modelOf(*found), .target = setPoints.front(), .runs = {}};
  for (const auto run : allSetupRuns) plan.runs.push_back(rulesFor(run));
  return plan;
}

Result<BenchSetup> Shop::recordBenchSetup(const BenchSetupDraft& draft) {
  const auto found = tool(draft.tool);
  if (!found) return tl::unexpected(found.error());
  if (!draft.reference.empty()) {
    if (const auto known = reference(draft.reference); !known) return tl::unexpected(known.error());
  }
  auto setup = evaluateSetup(draft, *found);
  if (!setup) return setup;
  return guarded([&]() -> Result<BenchSetup> {
    Writing writing(*inside_, Act::RecordSetup);
    setup->by = inside_->doer(setup->by);
    setup->id = inside_->bench.add(*setup, writing.stamp());
    inside_->drafts.remove(draft.tool, DraftOf::Setup);
    writing.commit();
    return std::move(*setup);
  });
}

Result<std::vector<BenchSetup>> Shop::benchSetups() const {
  return guarded([&]() -> Result<std::vector<BenchSetup>> { return inside_->bench.all(); });
}

Result<std::vector<ReferenceDoubt>> Shop::referenceDoubts(const std::string& toolId, const std::string& referenceId,
                                                          Date date) const {
  const auto checked = tool(toolId);
  if (!checked) return tl::unexpected(checked.error());
  const auto used = reference(referenceId);
  if (!used) return tl::unexpected(used.error());
  return guarded([&]() -> Result<std::vector<ReferenceDoubt>> {
    return doubtsOf(*used, inside_->bench.rangeOf(referenceId), *checked, date);
  });
}

Result<void> Shop::setReferenceRange(const std::string& id, const ReferenceRange& range) {
  if (const auto known = reference(id); !known) return tl::unexpected(known.error());
  if (!(range.low >= 0 && range.high > range.low && range.high <= 1e9)) {
    return refuse({.field = "range",
                   .found = writeNumber(range.low) + " to " + writeNumber(range.high),
                   .accepted = "0 or more, rising"});
  }
  return guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::AddReference);
    inside_->bench.setRange(id, range, writing.stamp());
    writing.commit();
    return {};
  });
}

Result<std::optional<ReferenceRange>> Shop::referenceRange(const std::string& id) const {
  if (const auto known = reference(id); !known) return tl::unexpected(known.error());
  return guarded([&]() -> Result<std::optional<ReferenceRange>> { return inside_->bench.rangeOf(id); });
}

}  // namespace steadyturn
