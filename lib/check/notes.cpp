#include "notes.h"

#include <fmt/core.h>

#include <algorithm>
#include <cmath>

#include "set_points.h"
#include "tolerance.h"

namespace steadyturn {
namespace {

// Shops round 60 % of the maximum to a mark they like: a set-point this near counts as taken.
constexpr double nearnessPercentOfMaximum = 5;

bool isTaken(StatedTorque asked, const CheckInput& check) {
  return std::ranges::any_of(check.points, [&](const SetPointReadings& point) {
    const double apart = std::abs(point.target.in(asked.unit) - asked.value);
    return atMost(apart / check.maximum.in(asked.unit) * 100, nearnessPercentOfMaximum);
  });
}

}  // namespace

std::vector<Note> notesOn(const CheckInput& check, double limitPercent) {
  std::vector<Note> notes;
  const int asked = rulesFor(check.kind).readings;
  for (const SetPointReadings& point : check.points) {
    const double taken = static_cast<double>(point.readings.size());
    if (taken < asked) {
      notes.push_back(
          {.kind = NoteKind::TooFewReadings, .target = point.target, .found = taken, .asked = 1.0 * asked});
    }
  }
  for (StatedTorque setPoint : proposeSetPoints(check.kind, check.minimum, check.maximum, check.resolution)) {
    if (!isTaken(setPoint, check)) notes.push_back({.kind = NoteKind::SetPointMissing, .target = setPoint});
  }
  const double expanded = 2 * check.reference.expandedPercent / check.reference.coverageFactor;
  const double quarter = limitPercent / 4;
  if (!atMost(expanded, quarter)) {
    notes.push_back({.kind = NoteKind::ReferenceTooUncertain, .target = {}, .found = expanded, .asked = quarter});
  }
  return notes;
}

std::string writeNote(const Note& note) {
  const std::string where = note.target ? writeTorque(*note.target) : "";
  switch (note.kind) {
    case NoteKind::TooFewReadings:
      return fmt::format("{}: {:.0f} reading{}, the standard asks for {:.0f} (ISO 6789-1)", where, note.found,
                         note.found == 1 ? "" : "s", note.asked);
    case NoteKind::SetPointMissing:
      return fmt::format("{}: no readings there, the standard asks for this set-point (ISO 6789-1)", where);
    case NoteKind::ReferenceTooUncertain:
      return fmt::format(
          "Reference: expanded uncertainty {} % (k = 2), the standard asks for at most {} %, a quarter of the "
          "permissible deviation (ISO 6789-1)",
          writeRounded(note.found), writeRounded(note.asked));
  }
  return {};
}

}  // namespace steadyturn
