#include <algorithm>
#include <utility>

#include "chart_model.h"

namespace steadyturn {
namespace {

double dayOf(Date date) { return static_cast<double>(date.time_since_epoch().count()); }

double between(const Passage::Knot& a, const Passage::Knot& b, Date date) {
  return a.count + (b.count - a.count) * (dayOf(date) - dayOf(a.date)) / (dayOf(b.date) - dayOf(a.date));
}

}  // namespace

Passage::Passage(std::vector<Knot> knots, std::string name) : knots_(std::move(knots)), name_(std::move(name)) {}

Passage Passage::ofCounts(std::string name) { return {{{countedAt(0), 0}, {countedAt(1), 1}}, std::move(name)}; }

Date countedAt(int count) { return Date{std::chrono::days{count}}; }

double Passage::place(Date date) const {
  if (byCalendar()) return dayOf(date);
  const Knot& first = knots_.front();
  const Knot& last = knots_.back();
  const double pace = (last.count - first.count) / (dayOf(last.date) - dayOf(first.date));
  if (date < first.date) return first.count - pace * (dayOf(first.date) - dayOf(date));
  if (date >= last.date) return last.count + pace * (dayOf(date) - dayOf(last.date));
  const auto next = std::ranges::upper_bound(knots_, date, {}, [](const Knot& knot) { return knot.date; });
  return between(*std::prev(next), *next, date);
}

}  // namespace steadyturn
