#include "bench_draft.h"

#include "text.h"

namespace steadyturn {
namespace {

std::optional<double> optionalNumber(const QString& typed) {
  if (typed.trimmed().isEmpty()) return std::nullopt;
  const Result<double> number = parseNumber(asNumberText(typed), "number");
  return number ? std::optional(*number) : std::nullopt;
}

QString numberText(const std::optional<double>& number) {
  return number ? fromText(writeNumber(*number)) : QString();
}

CheckDraft headingOf(const std::string& tool, const BenchDraft& draft) {
  CheckDraft check;
  check.tool = tool;
  check.reference = toText(draft.reference);
  check.by = toText(draft.by.trimmed());
  check.date = draft.date;
  check.phase = draft.phase;
  check.unit = draft.unit;
  check.direction = draft.direction;
  check.temperatureC = optionalNumber(draft.temperature);
  check.humidityPercent = optionalNumber(draft.humidity);
  check.note = toText(draft.note.trimmed());
  return check;
}

}  // namespace

int BenchDraft::typedReadings() const {
  int count = 0;
  for (const BenchPoint& point : points) {
    for (const QString& reading : point.readings) count += reading.trimmed().isEmpty() ? 0 : 1;
  }
  return count;
}

bool BenchDraft::unsaved() const { return typedReadings() > 0 && !(corrects && corrects->untouched); }

ReadDraft readNumbers(const std::string& tool, const BenchDraft& draft) {
  ReadDraft read;
  read.check = headingOf(tool, draft);
  for (std::size_t p = 0; p < draft.points.size(); ++p) {
    const BenchPoint& point = draft.points[p];
    if (point.target.trimmed().isEmpty() || problemWith(point.target, "target")) continue;
    DraftPoint made{asNumberText(point.target), {}};
    std::vector<std::size_t> from;
    for (std::size_t r = 0; r < point.readings.size(); ++r) {
      if (point.readings[r].trimmed().isEmpty() || problemWith(point.readings[r], "reading")) continue;
      made.readings.push_back(asNumberText(point.readings[r]));
      from.push_back(r);
    }
    if (from.empty()) continue;
    read.check.points.push_back(std::move(made));
    read.points.push_back(p);
    read.readings.push_back(std::move(from));
  }
  return read;
}

CheckDraft wholeDraft(const std::string& tool, const BenchDraft& draft) {
  CheckDraft whole = headingOf(tool, draft);
  for (const BenchPoint& point : draft.points) {
    DraftPoint& kept = whole.points.emplace_back(DraftPoint{asNumberText(point.target), {}});
    for (const QString& reading : point.readings) kept.readings.push_back(asNumberText(reading));
  }
  return whole;
}

BenchDraft fromKept(const CheckDraft& kept) {
  BenchDraft draft{.date = kept.date,
                   .phase = kept.phase,
                   .direction = kept.direction,
                   .unit = kept.unit,
                   .reference = fromText(kept.reference),
                   .by = fromText(kept.by),
                   .temperature = numberText(kept.temperatureC),
                   .humidity = numberText(kept.humidityPercent),
                   .note = fromText(kept.note),
                   .points = {}};
  for (const DraftPoint& point : kept.points) {
    BenchPoint& made = draft.points.emplace_back(BenchPoint{fromText(point.target), {}});
    for (const std::string& reading : point.readings) made.readings.push_back(fromText(reading));
  }
  return draft;
}

BenchDraft fromStored(const Check& check) {
  BenchDraft draft{.date = check.date,
                   .phase = check.phase,
                   .direction = check.direction,
                   .unit = check.points.empty() ? Unit::NewtonMetre : check.points.front().target.unit,
                   .reference = fromText(check.reference),
                   .by = fromText(check.by),
                   .temperature = numberText(check.temperatureC),
                   .humidity = numberText(check.humidityPercent),
                   .note = fromText(check.note),
                   .points = {}};
  for (const CheckPoint& point : check.points) {
    BenchPoint& made = draft.points.emplace_back(BenchPoint{fromText(writeNumber(point.target.value)), {}});
    for (const std::string& reading : point.readings) made.readings.push_back(fromText(reading));
  }
  return draft;
}

std::optional<Problem> problemWith(const QString& typed, const std::string& field) {
  if (typed.trimmed().isEmpty()) return std::nullopt;
  const Result<double> number = parseTorqueNumber(asNumberText(typed), field);
  if (!number) return number.error().front();
  if (*number <= 0) return Problem{.field = field, .found = toText(typed), .accepted = "a torque above zero"};
  return std::nullopt;
}

}  // namespace steadyturn
