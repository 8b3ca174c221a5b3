#include "inside.h"
#include "standing.h"
#include "validate.h"
#include "writing.h"

namespace steadyturn {

namespace {

Problem unknownTool(const std::string& id) {
  return {.kind = ProblemKind::NotFound,
          .field = "tool",
          .found = id,
          .accepted = "a tool of this shop; list them, or add it first"};
}

}  // namespace

Result<void> Shop::addTool(const Tool& tool) {
  if (auto problems = problemsOf(tool); !problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<void> {
    Writing writing(*inside_, Act::AddTool);
    if (inside_->tools.find(tool.id)) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "tool",
                     .found = tool.id,
                     .accepted = "a mark that no tool of this shop has yet"});
    }
    inside_->tools.add(tool, writing.stamp());
    writing.commit();
    return {};
  });
}

Result<Tool> Shop::tool(const std::string& id) const {
  return guarded([&]() -> Result<Tool> {
    if (auto tool = inside_->tools.find(id)) return *tool;
    return refuse(unknownTool(id));
  });
}

Result<std::vector<Tool>> Shop::tools() const {
  return guarded([&]() -> Result<std::vector<Tool>> { return inside_->tools.all(); });
}

// One change of status: which, from where it may come, and why.
static Result<void> changeStatus(Shop::Inside& shop, const std::string& id, ToolStatus to, Act act,
                                 const std::string& reason) {
  Problems problems;
  checkText(problems, "reason", reason);
  if (reason.empty()) problems.push_back({.field = "reason", .accepted = "why, in a few words"});
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<void> {
    Writing writing(shop, act);
    const auto tool = shop.tools.find(id);
    if (!tool) return refuse(unknownTool(id));
    if (tool->status == to) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "tool",
                     .found = id + " is already " + std::string(writeToolStatus(to)),
                     .accepted = "a tool that is not"});
    }
    if (tool->status == ToolStatus::Retired) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "tool",
                     .found = id + " is retired",
                     .accepted = "a tool in use; add it under a new mark if it comes back"});
    }
    shop.tools.setStatus(id, to, reason, shop.today(), writing.stamp());
    writing.commit();
    return {};
  });
}

Result<void> Shop::holdTool(const std::string& id, const std::string& reason) {
  return changeStatus(*inside_, id, ToolStatus::Held, Act::HoldTool, reason);
}

Result<void> Shop::releaseTool(const std::string& id, const std::string& reason) {
  const auto summaries =
      guarded([&]() -> Result<std::vector<PointSummary>> { return inside_->checks.summaries(id); });
  if (!summaries) return tl::unexpected(summaries.error());
  // A held tool goes back to work on proof, not on hope: its newest check has passed.
  if (newestVerdict(*summaries) > Verdict::ConditionalPass) {
    return refuse({.kind = ProblemKind::Conflict,
                   .field = "tool",
                   .found = id + " has no passing check as its newest",
                   .accepted = "adjust it and record a passing check as left, then release it"});
  }
  return changeStatus(*inside_, id, ToolStatus::InService, Act::ReleaseTool, reason);
}

Result<void> Shop::retireTool(const std::string& id, const std::string& reason) {
  return changeStatus(*inside_, id, ToolStatus::Retired, Act::RetireTool, reason);
}

}  // namespace steadyturn
