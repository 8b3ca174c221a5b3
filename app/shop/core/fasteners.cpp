#include <algorithm>

#include "candidates.h"
#include "inside.h"
#include "same_person.h"
#include "standing.h"
#include "validate.h"
#include "writing.h"

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
  if (!fastener.released()) {
    warnings.push_back("Not released: revision " + std::to_string(fastener.number) + " of " + fastener.id +
                       " waits for the approval of a second person.");
  }
  if (!fastener.limitBasis.empty()) {
    warnings.push_back("The part's limit is no value of the maker's: " + fastener.limitBasis);
  }
  if (!fastener.low || !fastener.high) {
    warnings.emplace_back(
        "No low and high torque on record: ±10 % of the target is taken as the window (an assumption).");
  }
  return warnings;
}

void warnOfAssumptions(std::vector<std::string>& warnings, const Choice& choice) {
  for (const auto& option : choice.options) {
    if (option.basis == OutlookBasis::Assumption) {
      warnings.push_back(
          option.tool +
          ": too few checks to know its drift, and too few of tools like it. Its newest mean deviation with half its "
          "permissible deviation as standard uncertainty is an assumption.");
    } else if (option.basis == OutlookBasis::Fleet) {
      warnings.push_back(option.tool + ": too few checks of its own; its drift is predicted from tools like it.");
    }
  }
}

// Where no wrench of the shop will do.
std::string whatWouldDo(const Demand& demand) {
  const Window window = windowOf(demand);
  const Unit unit = demand.target.unit;
  double high = window.high.in(unit);
  if (demand.partLimit) high = std::min(high, demand.partLimit->in(unit));
  const double low = window.low.in(unit);
  const double factor = demand.adapter ? adapterFactor(*demand.adapter) : 1;
  return "What would do: a wrench in service with a valid check that can be set near " +
         writeTorque({(low + high) / 2 / factor, unit}) + " and whose single pulls stay within ±" +
         writeRounded((high - low) / (high + low) * 100, 2) + " % of that.";
}

}  // namespace

Result<Saved> Shop::addFastener(const Fastener& fastener) {
  if (auto problems = problemsOf(fastener); !problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<Saved> {
    Writing writing(*inside_, Act::EnterFastener);
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
    first.enteredBy = inside_->doer(first.enteredBy);
    inside_->fasteners.add(first, writing.stamp());
    writing.commit();
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
    Writing writing(*inside_, Act::EnterFastener);
    const auto old = inside_->fasteners.find(fastener.id);
    if (!old) return refuse(unknownFastener(fastener.id));
    auto revised = fastener;
    revised.number = old->number + 1;
    revised.revisionReason = reason;
    revised.enteredBy = inside_->doer(revised.enteredBy);
    inside_->fasteners.add(revised, writing.stamp());
    writing.commit();
    return Saved{.warnings = warningsOf(revised)};
  });
}

Result<Fastener> Shop::fastener(const std::string& id) const {
  return guarded([&]() -> Result<Fastener> {
    if (auto fastener = inside_->fasteners.find(id)) return std::move(*fastener);
    return refuse(unknownFastener(id));
  });
}

Result<std::vector<Fastener>> Shop::fastenerRevisions(const std::string& id) const {
  return guarded([&]() -> Result<std::vector<Fastener>> {
    auto revisions = inside_->fasteners.revisions(id);
    if (revisions.empty()) return refuse(unknownFastener(id));
    return revisions;
  });
}

Result<Fastener> Shop::approveFastener(const std::string& id, const std::string& typedBy) {
  const auto& by = inside_->doer(typedBy);
  Problems problems;
  checkText(problems, "by", by);
  if (sameNameForm(by).empty()) problems.push_back({.field = "by", .accepted = "who approves it"});
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<Fastener> {
    Writing writing(*inside_, Act::ApproveFastener);
    const auto fastener = inside_->fasteners.find(id);
    if (!fastener) return refuse(unknownFastener(id));
    if (fastener->released()) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "fastener",
                     .found = id + " was approved by " + fastener->approvedBy,
                     .accepted = "a revision that waits for approval"});
    }
    if (samePerson(by, fastener->enteredBy)) {
      return refuse({.kind = ProblemKind::NotPermitted,
                     .field = "by",
                     .found = by + " entered this revision",
                     .accepted = "a second person"});
    }
    inside_->approvals.add(*fastener, by, inside_->today(), writing.stamp());
    writing.commit();
    return *inside_->fasteners.find(id);
  });
}

FastenerQuestions Shop::questionsAbout(const Fastener& fastener) const {
  return {.sensible = sensibleTorqueFor(fastener),
          .unit = unitQuestionOf(fastener),
          .needsPartLimit = fastener.needsPartLimit(),
          .warnings = warningsOf(fastener)};
}

Result<std::vector<Fastener>> Shop::fasteners() const {
  return guarded([&]() -> Result<std::vector<Fastener>> { return inside_->fasteners.all(); });
}

Result<std::vector<Fastener>> Shop::findFasteners(const std::string& words, int limit) const {
  return guarded([&]() -> Result<std::vector<Fastener>> { return inside_->fasteners.search(words, limit); });
}

Result<std::vector<SynonymGroup>> Shop::synonyms() const {
  return guarded([&]() -> Result<std::vector<SynonymGroup>> { return inside_->fasteners.synonyms().groups(); });
}

Result<void> Shop::addSynonym(const std::string& phrase, const std::string& meaning) {
  Problems problems;
  checkId(problems, "phrase", phrase);
  checkId(problems, "meaning", meaning);
  if (phrase == meaning) {
    problems.push_back({.field = "phrase", .found = phrase, .accepted = "another phrase than the meaning"});
  }
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::ChangeSynonyms);
    inside_->fasteners.synonyms().add(phrase, meaning);
    writing.commit();
    return {};
  });
}

Result<void> Shop::removeSynonym(const std::string& phrase) {
  return guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::ChangeSynonyms);
    if (!inside_->fasteners.synonyms().remove(phrase)) {
      return refuse({.kind = ProblemKind::NotFound,
                     .field = "phrase",
                     .found = phrase,
                     .accepted = "a phrase on the list of synonyms"});
    }
    writing.commit();
    return {};
  });
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
    const auto& book = inside_->fleetBook(asOf);
    std::vector<Candidate> candidates;
    for (const auto& tool : inside_->tools.all()) {
      // The history of a tool that can't reach the window is not read; choose() refuses it by its range alone.
      const auto summaries = inRange(tool, demand) ? inside_->checks.summaries(tool.id) : std::vector<PointSummary>{};
      const auto drift = driftOf(tool, summaries, book, asOf, policy);
      auto candidate = candidateOf(drift, overviewOf(drift, summaries, asOf));
      if (!inRange(tool, demand) && candidate.refusal && candidate.refusal->kind == RefusalKind::NoCheck) {
        candidate.refusal = Refusal{RefusalKind::OutOfRange, rangeInWords(tool)};
      }
      candidates.push_back(std::move(candidate));
    }
    FastenerChoice choice{
        .fastener = *fastener, .warnings = warningsFor(*fastener), .choice = steadyturn::choose(demand, candidates)};
    warnOfAssumptions(choice.warnings, choice.choice);
    if (choice.choice.options.empty()) choice.warnings.push_back(whatWouldDo(demand));
    return choice;
  });
}

}  // namespace steadyturn
