// A saved check is evidence: the Bench mends a mistake in it by a new record with a reason, and both stay.
#include <algorithm>

#include "bench_model.h"
#include "text.h"

namespace steadyturn {

Result<void> BenchModel::beginCorrection(std::int64_t check) {
  const Result<Check> stored = shop_.shop().check(check);
  if (!stored) return tl::unexpected(stored.error());
  if (stored->correctedBy) {
    return refuse({.kind = ProblemKind::Conflict,
                   .field = "check",
                   .found = std::to_string(check),
                   .accepted = "check " + std::to_string(*stored->correctedBy) + " replaced it: correct that one"});
  }
  if (Result<void> picked = pickTool(stored->tool); !picked) return picked;
  if (draft_.corrects && draft_.corrects->check == check) return {};
  if (draft_.unsaved()) {
    return refuse({.kind = ProblemKind::Conflict,
                   .field = "tool",
                   .found = stored->tool,
                   .accepted = "save or clear the readings that are typed for it first"});
  }
  const bool oneUnit = std::ranges::all_of(stored->points, [&stored](const CheckPoint& point) {
    return point.target.unit == stored->points.front().target.unit;
  });
  if (!oneUnit) {
    return refuse({.kind = ProblemKind::Conflict,
                   .field = "check",
                   .found = std::to_string(check),
                   .accepted = "its set-points are in several units: correct it by sturn check correct"});
  }
  if (!draft_.corrects) heading_ = draft_;
  draft_ = fromStored(*stored);
  for (BenchPoint& point : draft_.points) {
    const auto asked = static_cast<std::size_t>(std::max(1, plan_->readings));
    if (point.readings.size() < asked) point.readings.resize(asked);
  }
  draft_.corrects = Correction{.check = check, .untouched = true};
  touched_ = false;
  show();
  return {};
}

void BenchModel::becomeCorrection(std::int64_t check, const QString& reason) {
  if (!draft_.corrects) heading_ = draft_;
  draft_.corrects = Correction{.check = check, .reason = reason};
  show();
}

void BenchModel::setCorrectionReason(const QString& reason) {
  if (draft_.corrects) draft_.corrects->reason = reason;
}

void BenchModel::giveUpCorrection() {
  if (!draft_.corrects) return;
  keepSoon_.stop();
  touched_ = false;
  if (onDisk_.erase(tool_->id) > 0) keeper_.discard(tool_->id);
  beginAnew();
  show();
}

std::optional<std::int64_t> BenchModel::recordedAlready() const {
  if (!tool_) return std::nullopt;
  const Result<std::vector<Check>> checks = shop_.shop().checksOf(tool_->id);
  if (!checks) return std::nullopt;
  const auto same = std::ranges::find_if(*checks, [this](const Check& check) {
    return !check.correctedBy && check.date == draft_.date && check.phase == draft_.phase &&
           check.direction == draft_.direction;
  });
  return same == checks->end() ? std::nullopt : std::optional(same->id);
}

}  // namespace steadyturn
