// What a chart shows, without a pixel: the screen, SVG, PNG and PDF draw the same description, so that they can't
// disagree.
#pragma once

#include <limits>
#include <optional>
#include <string>
#include <vector>

#include "date.h"

namespace steadyturn {

enum class Mark { Circle, Triangle, Square, Diamond };  // shape carries the meaning, colour only repeats it
enum class Stroke { Solid, Dashed, Dotted };
// What a thing means; the drawing side gives each role one colour and width, the same everywhere.
enum class Role { AsFound, AsLeft, Fit, Prediction, Limit, Adjustment, Crossing, Today };

struct ChartPoint {
  Date date{};
  double value = 0;
  std::optional<double> uncertainty;  // half the height of the error bar
  std::string note;                   // what hovering tells: date, value, verdict …
};

struct PointSeries {
  std::string name;
  Role role = Role::AsFound;
  Mark mark = Mark::Circle;
  std::vector<ChartPoint> points;
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
  std::vector<Edge> edges;  // rising dates
};

struct HorizontalLine {
  std::string name;
  Role role = Role::Limit;
  double value = 0;
};

struct VerticalLine {
  std::string name;
  Role role = Role::Adjustment;
  Date date{};
};

struct ChartModel {
  std::string title;      // "TW-07 at 60 N·m"
  std::string subtitle;   // one sentence that says what the chart says
  std::string valueAxis;  // "mean deviation, %"
  std::vector<PointSeries> points;
  std::vector<LineSeries> lines;
  std::vector<Band> bands;
  std::vector<HorizontalLine> horizontals;
  std::vector<VerticalLine> verticals;
};

}  // namespace steadyturn
