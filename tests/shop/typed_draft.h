// A draft with so many readings; the text of each is its own, so that a lost or swapped one shows.
#pragma once

#include <string>

#include "shop.h"

namespace steadyturn {

inline CheckDraft typedDraft(int readings) {
  CheckDraft draft;
  draft.tool = "T";
  draft.reference = "R";
  draft.by = "Núria";
  draft.date = Date(std::chrono::days(20514));
  draft.temperatureC = 21.5;
  draft.note = "second line\nof \"notes\"";
  for (int i = 0; i < readings; ++i) {
    if (i % 5 == 0) draft.points.push_back({.target = std::to_string(20 + i), .readings = {}});
    draft.points.back().readings.push_back(std::to_string(20 + i) + ",0" + std::to_string(i % 7));
  }
  return draft;
}

inline bool sameTyping(const CheckDraft& a, const CheckDraft& b) {
  if (a.points.size() != b.points.size()) return false;
  for (std::size_t i = 0; i < a.points.size(); ++i) {
    if (a.points[i].target != b.points[i].target || a.points[i].readings != b.points[i].readings) return false;
  }
  return a.tool == b.tool && a.reference == b.reference && a.by == b.by && a.date == b.date && a.phase == b.phase &&
         a.unit == b.unit && a.direction == b.direction && a.temperatureC == b.temperatureC &&
         a.humidityPercent == b.humidityPercent && a.note == b.note;
}

inline int readingsIn(const CheckDraft& draft) {
  std::size_t count = 0;
  for (const auto& point : draft.points) count += point.readings.size();
  return static_cast<int>(count);
}

}  // namespace steadyturn
