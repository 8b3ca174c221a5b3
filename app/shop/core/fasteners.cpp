#include "candidates.h"
#include "inside.h"
#include "standing.h"
#include "validate.h"

namespace steadyturn {

namespace {

Problem unknownFastener(const std::string& id) {
  return {.kind = ProblemKind::NotFound,
          .field = "fastener",
          .found = id,
          .accepted = "a fastener of this shop; find it by its words, or add it first"};
}

std::vector<std::string> warningsFor(const Fastener& fastener) {
  auto warnings = warningsOf(fastener);
  if (!fastener.low || !fastener.high) {
    warnings.emplace_back(
        "No low and high torque on record: ±10 % of the target is taken as the window (an assumption).");
  }
  return warnings;
}

void warnOfAssumptions(std::vector<std::string>& warnings, const Choice& choice) {
  for (const auto& option : choice.options) {
    if (!option.assumedDrift) continue;
    warnings.push_back(
        option.tool +
        ": too few checks to know its drift. Its newest mean deviation with half its permissible deviation as "
        "standard uncertainty is an assumption.");
  }
}

}  // namespace

Result<Saved> Shop::addFastener(const Fastener& fastener) {
  if (auto problems = problemsOf(fastener); !problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<Saved> {
    Transaction transaction(inside_->database);
    if (inside_->fasteners.find(fastener.id)) {
      return refuse(
          {.kind = ProblemKind::Conflict,
           .field = "fastener",
           .found = fastener.id,
           .accepted = "a mark that no fastener of this shop has yet; a changed specification is a revision"});
    }
    auto first = fastener;
    first.number = 1;
    first.revisionReason.clear();
    inside_->fasteners.add(first, inside_->stamp());
    transaction.commit();
    return Saved{.warnings = warningsOf(first)};
  });
}

Result<Saved> Shop::reviseFastener(const Fastener& fastener, const std::string& reason) {
  auto problems = problemsOf(fastener);
  checkText(problems, "reason", reason);
  if (reason.empty())
    problems.push_back({.field = "reason", .accepted = "why the specification changes, in a few words"});
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<Saved> {
    Transaction transaction(inside_->database);
    const auto old = inside_->fasteners.find(fastener.id);
    if (!old) return refuse(unknownFastener(fastener.id));
    auto revised = fastener;
    revised.number = old->number + 1;
    revised.revisionReason = reason;
    inside_->fasteners.add(revised, inside_->stamp());
    transaction.commit();
    return Saved{.warnings = warningsOf(revised)};
  });
}

Result<Fastener> Shop::fastener(const std::string& id) const {
  return guarded([&]() -> Result<Fastener> {
    if (auto fastener = inside_->fasteners.find(id)) return std::move(*fastener);
    return refuse(unknownFastener(id));
  });
}

Result<std::vector<Fastener>> Shop::fasteners() const {
  return guarded([&]() -> Result<std::vector<Fastener>> { return inside_->fasteners.all(); });
}

Result<std::vector<Fastener>> Shop::findFasteners(const std::string& words, int limit) const {
  return guarded([&]() -> Result<std::vector<Fastener>> { return inside_->fasteners.search(words, limit); });
}

Result<FastenerChoice> Shop::choose(const std::string& id, Date asOf, const std::optional<Adapter>& adapter) const {
  return guarded([&]() -> Result<FastenerChoice> {
    const auto fastener = inside_->fasteners.find(id);
    if (!fastener) return refuse(unknownFastener(id));
    const auto policy = inside_->policy();
    const auto demand = demandOf(*fastener, adapter, policy.partLimitRisk);
    if (adapter && !(adapterFactor(*adapter) > 0)) {
      return refuse({.field = "adapter",
                     .found = "length " + writeNumber(adapter->wrenchLengthMm) + ", offset " +
                              writeNumber(adapter->offsetMm) + ", angle " + writeNumber(adapter->angleDeg),
                     .accepted = "a length above 0 and an offset that leaves leverage"});
    }
    std::vector<Candidate> candidates;
    for (const auto& tool : inside_->tools.all()) {
      // The history of a tool that can't reach the window is not read; choose() refuses it by its range alone.
      const auto summaries = inRange(tool, demand) ? inside_->checks.summaries(tool.id) : std::vector<PointSummary>{};
      const auto drift = driftOf(tool, summaries, asOf, policy);
      auto candidate = candidateOf(drift, overviewOf(drift, summaries, asOf));
      if (!inRange(tool, demand) && candidate.refusal && candidate.refusal->kind == RefusalKind::NoCheck) {
        candidate.refusal = Refusal{RefusalKind::OutOfRange, rangeInWords(tool)};
      }
      candidates.push_back(std::move(candidate));
    }
    FastenerChoice choice{
        .fastener = *fastener, .warnings = warningsFor(*fastener), .choice = steadyturn::choose(demand, candidates)};
    warnOfAssumptions(choice.warnings, choice.choice);
    return choice;
  });
}

}  // namespace steadyturn
