#include "check_gathering.h"

#include <algorithm>
#include <utility>

namespace steadyturn {
namespace {

// Far above what any standard asks for; it keeps a file from making one check of all its rows.
constexpr std::size_t mostSetPoints = 100;

std::string inLine(const GatheredCheck& check, std::string_view value) {
  return (value.empty() ? "nothing" : std::string(value)) + ", as in line " + std::to_string(check.line) +
         " of the same check";
}

void refuseOtherHead(ImportRow& row, const GatheredCheck& check, const GatheredCheck& head) {
  if (head.draft.unit != check.draft.unit) {
    row.refuse(checkUnit, row.code(checkUnit), inLine(check, unitCode(check.draft.unit)));
  }
  if (head.draft.reference != check.draft.reference) {
    row.refuse(checkReference, head.draft.reference, inLine(check, check.draft.reference));
  }
  if (head.draft.by != check.draft.by) row.refuse(checkBy, head.draft.by, inLine(check, check.draft.by));
}

}  // namespace

CheckGathering::CheckGathering(const Shop::Inside& shop, const ImportOptions& options)
    : shop_(shop), options_(options), shopHasChecks_(!shop.checks.newest(1).empty()) {
  for (Tool& tool : shop.tools.all()) tools_.emplace(tool.id, std::move(tool));
  for (Reference& reference : shop.references.all()) references_.emplace(reference.id, std::move(reference));
}

void CheckGathering::take(ImportRow& row) {
  if (!check_ || !isHeadOfRowBefore(row)) {
    point_.reset();
    check_ = checkOf(row);
    if (row.sound()) rememberHead(row);
  }
  row.torque(checkReading);
  if (!check_) {
    row.torque(checkTarget);
    return;
  }
  GatheredCheck& check = checks_[*check_];
  point_ = pointOf(row, check);
  if (row.sound()) {
    check.draft.points[*point_].readings.push_back(row.typedNumber(checkReading));
    return;
  }
  check.sound = false;
  check_.reset();  // what was refused is looked at again in the next row
}

bool CheckGathering::isHeadOfRowBefore(const ImportRow& row) const {
  for (std::size_t i = 0; i < headCells.size(); ++i) {
    if (row.raw(headCells[i]) != head_[i]) return false;
  }
  return true;
}

void CheckGathering::rememberHead(const ImportRow& row) {
  for (std::size_t i = 0; i < headCells.size(); ++i) head_[i] = row.raw(headCells[i]);
}

std::optional<std::size_t> CheckGathering::checkOf(ImportRow& row) {
  const auto key = keyOf(row);
  GatheredCheck head = readHead(row, key.value_or(Key{}));
  if (!key) return std::nullopt;
  const auto [known, isNew] = placeOf_.emplace(*key, checks_.size());
  if (isNew) {
    refuseKnown(row, head.draft);
    checks_.push_back(std::move(head));
  } else if (const GatheredCheck& check = checks_[known->second]; check.sound && row.sound()) {
    refuseOtherHead(row, check, head);
  }
  return known->second;
}

std::optional<CheckGathering::Key> CheckGathering::keyOf(ImportRow& row) const {
  const std::string mark = row.text(checkTool);
  const auto tool = tools_.find(mark);
  if (tool == tools_.end()) {
    row.refuse(checkTool, mark, "a tool of this shop; import the tools first", ProblemKind::NotFound);
  }
  const Date date = row.date(checkDate);
  const Phase phase = row.valueOf(parsePhase(row.code(checkPhase)));
  if (!row.sound()) return std::nullopt;
  return Key{&tool->second, date, phase};
}

GatheredCheck CheckGathering::readHead(ImportRow& row, const Key& key) const {
  const auto& [tool, date, phase] = key;
  GatheredCheck head{.tool = tool, .line = row.line()};
  head.draft.tool = tool == nullptr ? std::string() : tool->id;
  head.draft.date = date;
  head.draft.phase = phase;
  head.draft.unit = row.unit(checkUnit);
  head.draft.reference = row.text(checkReference);
  head.draft.by = row.text(checkBy);
  if (head.draft.by.empty()) head.draft.by = options_.by;
  if (head.draft.reference.empty()) return head;
  if (const auto found = references_.find(head.draft.reference); found != references_.end()) {
    head.reference = &found->second;
  } else {
    row.refuse(checkReference, head.draft.reference, "a reference standard of this shop; import the references first",
               ProblemKind::NotFound);
  }
  return head;
}

void CheckGathering::refuseKnown(ImportRow& row, const CheckDraft& draft) const {
  if (!shopHasChecks_ || !shop_.checks.exists(draft.tool, draft.date, draft.phase)) return;
  row.refuse(checkDate, row.code(checkDate),
             "a check that the shop does not have: " + draft.tool + " has one " +
                 std::string(writePhase(draft.phase)) + " of that day already",
             ProblemKind::Conflict);
}

std::optional<std::size_t> CheckGathering::pointOf(ImportRow& row, GatheredCheck& check) {
  if (point_ && row.raw(checkTarget) == target_) return point_;
  const double target = row.torque(checkTarget);
  if (!row.sound()) return std::nullopt;
  target_ = row.raw(checkTarget);
  auto& points = check.draft.points;
  const auto same = std::ranges::find_if(points, [&](const DraftPoint& point) {
    // "20" and "20.0" are one set-point.
    return parseTorqueNumber(point.target, "target") == target;
  });
  if (same != points.end()) return same - points.begin();
  if (points.size() == mostSetPoints) {
    row.refuse(checkTarget, row.code(checkTarget), "at most 100 set-points in one check");
    return std::nullopt;
  }
  points.push_back({.target = row.typedNumber(checkTarget), .readings = {}});
  check.pointLines.push_back(row.line());
  return points.size() - 1;
}

}  // namespace steadyturn
