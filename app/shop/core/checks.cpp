#include "bench_spans.h"
#include "budget_view.h"
#include "check_recording.h"
#include "inside.h"
#include "set_points.h"
#include "shop_people.h"
#include "validate.h"
#include "writing.h"

namespace steadyturn {

namespace {

// The records a draft names, looked up once.
struct Basis {
  Tool tool;
  std::optional<Reference> reference;
  DecisionRule rule;
  std::vector<BenchSetup> setups;  // of the tool's model

  CheckBasis view(Date date) const {
    return {.tool = &tool,
            .reference = reference ? &*reference : nullptr,
            .rule = rule,
            .variation = spansOn(setups, date)};
  }
  BudgetBasis budget() const {
    return {.tool = &tool, .reference = reference ? &*reference : nullptr, .setups = &setups};
  }
};

Result<Basis> basisOf(const Shop& face, const Shop::Inside& shop, const std::string& toolId,
                      const std::string& referenceId) {
  auto tool = face.tool(toolId);
  if (!tool) return tl::unexpected(tool.error());
  Basis basis{.tool = std::move(*tool), .reference = {}, .rule = shop.policy().rule, .setups = {}};
  basis.setups = shop.bench.ofModel(modelOf(basis.tool));
  if (!referenceId.empty()) {
    auto reference = face.reference(referenceId);
    if (!reference) return tl::unexpected(reference.error());
    basis.reference = std::move(*reference);
  }
  return basis;
}

Problem unknownCheck(std::int64_t id) {
  return {.kind = ProblemKind::NotFound,
          .field = "check",
          .found = std::to_string(id),
          .accepted = "the number of a check of this shop; list them"};
}

}  // namespace

Result<CheckPlan> Shop::planCheck(const std::string& id) const {
  auto found = tool(id);
  if (!found) return tl::unexpected(found.error());
  const auto& rules = rulesFor(found->kind);
  return CheckPlan{.setPoints = proposeSetPoints(found->kind, found->minimumTorque(), found->maximumTorque(),
                                                 found->resolutionTorque()),
                   .readings = rules.readings,
                   .exercisePulls = rules.exercisePulls,
                   .limitPercent = found->permittedPercent(),
                   .source = std::string(rules.source)};
}

Result<CheckResult> Shop::evaluateDraft(const CheckDraft& draft) const {
  return guarded([&]() -> Result<CheckResult> {
    const auto basis = basisOf(*this, *inside_, draft.tool, draft.reference);
    if (!basis) return tl::unexpected(basis.error());
    auto evaluated = evaluateTyped(draft, basis->view(draft.date));
    if (!evaluated) return tl::unexpected(evaluated.error());
    return std::move(evaluated->result);
  });
}

Result<std::vector<BudgetView>> Shop::budgetOf(const CheckDraft& draft) const {
  return guarded([&]() -> Result<std::vector<BudgetView>> {
    const auto basis = basisOf(*this, *inside_, draft.tool, draft.reference);
    if (!basis) return tl::unexpected(basis.error());
    const auto evaluated = evaluateTyped(draft, basis->view(draft.date));
    if (!evaluated) return tl::unexpected(evaluated.error());
    return budgetViews(evaluated->check, evaluated->result, basis->budget());
  });
}

Result<std::vector<BudgetView>> Shop::budgetOf(std::int64_t id) const {
  return guarded([&]() -> Result<std::vector<BudgetView>> {
    const auto stored = check(id);
    if (!stored) return tl::unexpected(stored.error());
    const auto basis = basisOf(*this, *inside_, stored->tool, stored->reference);
    if (!basis) return tl::unexpected(basis.error());
    const auto result = evaluateCheck(inputOf(*stored, basis->tool));
    if (!result) return tl::unexpected(result.error());
    return budgetViews(*stored, *result, basis->budget());
  });
}

// Stores an evaluated draft, as a correction of `corrects` where given.
static Result<Check> store(Shop::Inside& shop, const Shop& face, const CheckDraft& draft,
                           std::optional<std::int64_t> corrects, const std::string& reason) {
  return guarded([&]() -> Result<Check> {
    const auto basis = basisOf(face, shop, draft.tool, draft.reference);
    if (!basis) return tl::unexpected(basis.error());
    auto evaluated = evaluateTyped(draft, basis->view(draft.date));
    if (!evaluated) return tl::unexpected(evaluated.error());
    auto& check = evaluated->check;
    check.corrects = corrects;
    check.correctionReason = reason;
    check.by = shop.doer(check.by);
    Writing writing(shop, corrects ? Act::CorrectCheck : Act::RecordCheck);
    if (!corrects && shop.checks.exists(check.tool, check.date, check.phase, check.direction)) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "date",
                     .found = check.tool + " has a check " + std::string(writePhase(check.phase)) +
                              (check.direction == Direction::Clockwise ? "" : " counterclockwise") + " on " +
                              writeDate(check.date),
                     .accepted = "another day, phase or direction; a mistake is mended by correcting that check"});
    }
    check.id = shop.checks.add(check, writing.stamp());
    if (!corrects) shop.drafts.remove(check.tool, DraftOf::Check);
    writing.commit();
    return std::move(check);
  });
}

Result<Check> Shop::recordCheck(const CheckDraft& draft) { return store(*inside_, *this, draft, {}, {}); }

Result<Check> Shop::correctCheck(std::int64_t id, const CheckDraft& draft, const std::string& reason) {
  if (auto allowed = may(*this, Act::CorrectCheck); !allowed) return tl::unexpected(allowed.error());
  Problems problems;
  checkText(problems, "reason", reason);
  if (reason.empty())
    problems.push_back({.field = "reason", .accepted = "why the check is corrected, in a few words"});
  auto old = check(id);
  if (!old) return old;
  if (old->correctedBy) {
    problems.push_back({.kind = ProblemKind::Conflict,
                        .field = "check",
                        .found = std::to_string(id) + " is corrected by " + std::to_string(*old->correctedBy),
                        .accepted = "the newest record: correct that one"});
  }
  if (draft.tool != old->tool) {
    problems.push_back(
        {.field = "tool", .found = draft.tool, .accepted = old->tool + ", as in the check it corrects"});
  }
  if (!problems.empty()) return tl::unexpected(problems);
  return store(*inside_, *this, draft, id, reason);
}

Result<Check> Shop::check(std::int64_t id) const {
  return guarded([&]() -> Result<Check> {
    if (auto check = inside_->checks.find(id)) return std::move(*check);
    return refuse(unknownCheck(id));
  });
}

Result<std::vector<Check>> Shop::checksOf(const std::string& id) const {
  if (const auto found = tool(id); !found) return tl::unexpected(found.error());
  return guarded([&]() -> Result<std::vector<Check>> { return inside_->checks.ofTool(id); });
}

Result<std::vector<Check>> Shop::newestChecks(int limit) const {
  return guarded([&]() -> Result<std::vector<Check>> { return inside_->checks.newest(limit); });
}

}  // namespace steadyturn
