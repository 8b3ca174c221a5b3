#include <algorithm>

#include "inside.h"
#include "shop_proof.h"
#include "standing.h"

namespace steadyturn {

Result<CertificateData> Shop::certificate(std::int64_t id) const {
  const auto proof = proveCheck(*this, id);
  if (!proof) return tl::unexpected(proof.error());
  const auto issued = check(id);
  if (!issued) return tl::unexpected(issued.error());
  const auto checked = drift(issued->tool, std::max(today(), issued->date));
  if (!checked) return tl::unexpected(checked.error());
  return guarded([&]() -> Result<CertificateData> {
    CertificateData data{.shopName = facts().name,
                         .shopPlace = facts().place,
                         .tool = checked->tool,
                         .check = *issued,
                         .reference = {},
                         .before = {},
                         .issued = today(),
                         .number = "C-" + std::to_string(id),
                         .country = facts().country,
                         .dueDate = {},
                         .ledger = LedgerPlace{.sequence = proof->sequence,
                                               .leaf = proof->leaf,
                                               .size = proof->head.size,
                                               .root = writeHash(proof->head.root),
                                               .path = proof->path}};
    if (const auto printed = inside_->issued.newest("certificate", std::to_string(id), "pdf"))
      data.printed = PrintedCopy{.sha256 = printed->report.sha256, .at = printed->at};
    // An old check's paper says nothing about the next: later checks have moved that day.
    const auto summaries = inside_->checks.summaries(issued->tool);
    if (!summaries.empty() && summaries.back().check == id) data.dueDate = checked->dueDate;
    if (!issued->reference.empty()) data.reference = inside_->references.find(issued->reference);
    if (issued->phase == Phase::AsLeft) {
      for (auto& other : inside_->checks.ofTool(issued->tool)) {
        const bool sameVisit = other.date == issued->date && other.phase == Phase::AsFound &&
                               other.direction == issued->direction && !other.correctedBy;
        if (sameVisit) data.before = std::move(other);
      }
    }
    return data;
  });
}

namespace {

DueWork workOf(const ToolOverview& row, const CheckPlan& plan, int intervalDays) {
  DueWork work;
  work.tool = row.tool.id;
  work.description = row.tool.description;
  work.due = row.dueDate;
  work.lastCheck = row.lastCheck;
  work.setPoints = plan.setPoints;
  work.readings = plan.readings;
  work.limitPercent = row.limitPercent;
  if (row.standing == Standing::NeverChecked) {
    work.reason = DueReason::NeverChecked;
  } else if (row.standing == Standing::Failed) {
    work.reason = DueReason::Failed;
  } else if (*row.dueDate < *row.lastCheck + std::chrono::days(intervalDays)) {
    work.reason = DueReason::Drift;
    work.deciding = row.worstTarget;
  } else {
    work.reason = DueReason::Interval;
    work.intervalDays = intervalDays;
  }
  return work;
}

}  // namespace

Result<std::vector<DueWork>> Shop::dueWork(Date asOf, Date until) const {
  auto rows = due(asOf, until);
  if (!rows) return tl::unexpected(rows.error());
  const int usual = policy().intervalDays;
  std::vector<DueWork> list;
  for (const auto& row : *rows) {
    if (row.standing == Standing::Held) continue;  // it is not used, so nothing is due until it is released
    const auto plan = planCheck(row.tool.id);
    if (!plan) return tl::unexpected(plan.error());
    list.push_back(workOf(row, *plan, row.tool.intervalDays.value_or(usual)));
  }
  return list;
}

Result<ToolRegisterData> Shop::toolRegister(Date asOf) const {
  auto rows = overview(asOf);
  if (!rows) return tl::unexpected(rows.error());
  ToolRegisterData data;
  data.shopName = facts().name;
  data.shopPlace = facts().place;
  data.today = asOf;
  data.intervalDays = policy().intervalDays;
  for (auto& row : *rows) {
    data.entries.push_back({.tool = std::move(row.tool),
                            .lastCheck = row.lastCheck,
                            .due = row.dueDate,
                            .state = std::string(writeStanding(row.standing))});
  }
  return data;
}

}  // namespace steadyturn
