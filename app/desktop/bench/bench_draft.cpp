#include "bench_draft.h"

#include "text.h"

namespace steadyturn {
namespace {

std::optional<double> optionalNumber(const QString& typed) {
  if (typed.trimmed().isEmpty()) return std::nullopt;
  const Result<double> number = parseNumber(asNumberText(typed), "number");
  return number ? std::optional(*number) : std::nullopt;
}

}  // namespace

int BenchDraft::typedReadings() const {
  int count = 0;
  for (const BenchPoint& point : points) {
    for (const QString& reading : point.readings) count += reading.trimmed().isEmpty() ? 0 : 1;
  }
  return count;
}

ReadDraft readNumbers(const std::string& tool, const BenchDraft& draft) {
  ReadDraft read;
  read.check.tool = tool;
  read.check.reference = toText(draft.reference);
  read.check.by = toText(draft.by.trimmed());
  read.check.date = draft.date;
  read.check.phase = draft.phase;
  read.check.unit = draft.unit;
  read.check.direction = draft.direction;
  read.check.temperatureC = optionalNumber(draft.temperature);
  read.check.humidityPercent = optionalNumber(draft.humidity);
  read.check.note = toText(draft.note.trimmed());
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

std::optional<Problem> problemWith(const QString& typed, const std::string& field) {
  if (typed.trimmed().isEmpty()) return std::nullopt;
  const Result<double> number = parseTorqueNumber(asNumberText(typed), field);
  if (!number) return number.error().front();
  if (*number <= 0) return Problem{.field = field, .found = toText(typed), .accepted = "a torque above zero"};
  return std::nullopt;
}

}  // namespace steadyturn
