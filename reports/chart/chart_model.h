// What a chart shows, without a pixel: the screen, SVG, PNG and PDF draw the same description, so that they can't
// disagree.
#pragma once

#include <cstdint>
#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "date.h"

namespace steadyturn {

enum class Mark { Circle, Triangle, Square, Diamond, Star };  // shape carries the meaning, colour only repeats it
enum class Stroke { Solid, Dashed, Dotted };
// What a thing means; the drawing side gives each role one colour and width, the same everywhere.
enum class Role { AsFound, AsLeft, Fit, Prediction, Limit, Guard, Control, Adjustment, Crossing, Today, Event };

struct ChartPoint {
  Date date{};
  double value = 0;
  std::optional<double> uncertainty;  // half the height of the error bar
  std::string note;                   // what hovering tells: date, value, verdict …
  std::int64_t record = 0;            // the check it stands for; 0: none
};

struct PointSeries {
  std::string name;
  Role role = Role::AsFound;
  Mark mark = Mark::Circle;
  std::vector<ChartPoint> points;
  bool onFloor = false;  // events without a value: drawn in a row at the foot of the chart
};

struct LineSeries {
  std::string name;
  Role role = Role::Fit;
  Stroke stroke = Stroke::Solid;
  std::vector<ChartPoint> points;
};

struct Band {
  std::string name;
  Role role = Role::Prediction;
  struct Edge {
    Date date{};
    double low = 0, high = 0;
  };
  std::vector<Edge> edges;          // rising dates
  Stroke outline = Stroke::Dotted;  // tells one kind of band from another where colours don't
};

struct HorizontalLine {
  std::string name;
  Role role = Role::Limit;
  double value = 0;
  Stroke stroke = Stroke::Solid;
};

struct VerticalLine {
  std::string name;
  Role role = Role::Adjustment;
  Date date{};
};

// How far along the chart a day lies: by the calendar, or by what was done until then.
class Passage {
 public:
  struct Knot {
    Date date{};
    double count = 0;
  };
  Passage() = default;  // by the calendar
  // Between knots the count grows evenly; before the first and after the last at the pace of the whole. REQUIRES: at
  // least two knots, rising dates, a count that never falls and does not stay the same throughout.
  Passage(std::vector<Knot> knots, std::string name);
  // Of a chart that shows no days but whole numbers, such as the length of an interval: see countedAt.
  static Passage ofCounts(std::string name);

  bool byCalendar() const { return knots_.empty(); }
  const std::string& name() const { return name_; }  // of the axis; empty by the calendar
  double place(Date date) const;                     // days since 1970-01-01, or the count

 private:
  std::vector<Knot> knots_;
  std::string name_;
};

// The day that stands at a whole number on a chart whose passage is ofCounts.
Date countedAt(int count);

struct ChartModel {
  std::string title;      // "TW-07 at 60 N·m"
  std::string subtitle;   // one sentence that says what the chart says
  std::string basis{};    // one more: what that rests on; may be empty
  std::string valueAxis;  // "mean deviation, %"
  std::vector<PointSeries> points;
  std::vector<LineSeries> lines;
  std::vector<Band> bands;
  std::vector<HorizontalLine> horizontals;
  std::vector<VerticalLine> verticals;
  Passage across{};
  bool plainValues = false;            // shares and counts, written without signs
  std::optional<double> valuesFrom{};  // where the axis of values begins; absent: a little below the lowest
};

}  // namespace steadyturn
