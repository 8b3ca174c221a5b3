#include "demo_parts.h"

namespace steadyturn {

namespace {

using enum ToolType;
using enum ToolClass;
using std::chrono::year;

constexpr Date on(int y, unsigned m, unsigned d) {
  return std::chrono::sys_days(year(y) / std::chrono::month(m) / std::chrono::day(d));
}

struct Sort {
  const char* id = "";
  const char* description = "";
  const char* maker = "";
  ToolKind kind;
  double minimum = 0;  // 0: none marked
  double maximum = 0;
  double resolution = 0;  // 0: none
  const char* drive = "";
  Unit unit = Unit::NewtonMetre;
};

struct Life {
  double bias = 0, drift = 0, checkScatter = 0, pullScatter = 0;
  Date first, last;
  int cadence = 0;
  double adjustBeyond = 0;
};

DemoTool make(const Sort& sort, const Life& life) {
  const auto given = [](double value) { return value > 0 ? std::optional(value) : std::nullopt; };
  DemoTool made;
  made.tool = {.id = sort.id,
               .description = sort.description,
               .maker = sort.maker,
               .serial = std::string("s") + std::to_string(4000 + 17 * std::stoi(std::string(sort.id + 1))),
               .kind = sort.kind,
               .unit = sort.unit,
               .minimum = given(sort.minimum),
               .maximum = sort.maximum,
               .resolution = given(sort.resolution),
               .drive = sort.drive,
               .intervalDays = {},
               .limitPercent = {},
               .status = ToolStatus::InService,
               .statusReason = {}};
  made.biasPercent = life.bias;
  made.driftPercentPerYear = life.drift;
  made.checkScatterPercent = life.checkScatter;
  made.pullScatterPercent = life.pullScatter;
  made.firstCheck = life.first;
  made.lastCheck = life.last;
  made.cadenceDays = life.cadence;
  made.adjustBeyondPercent = life.adjustBeyond;
  return made;
}

}  // namespace

std::vector<DemoTool> demoTools() {
  const Date open = demoToday;
  return {
      make({"W01", "click wrench, small", "maker A", {Setting, A}, 2, 10, 0.1, "1/4 in square"},
           {0.6, 0.25, 0.3, 0.5, on(2021, 1, 12), open, 182, 4.5}),
      make({"W02", "click screwdriver", "maker B", {Setting, D}, 1, 6, 0.05, "1/4 in hexagon"},
           {-0.8, -0.1, 0.4, 0.8, on(2021, 2, 3), open, 350, 4.5}),
      make({"W03", "click wrench, worn out", "maker A", {Setting, A}, 10, 50, 0.5, "3/8 in square"},
           {1.5, 0.5, 0.5, 0.9, on(2020, 12, 7), on(2024, 1, 1), 182, 3.2}),
      make({"W04", "click wrench, filter bench", "maker C", {Setting, A}, 5, 25, 0.25, "3/8 in square"},
           {0.3, 0.08, 0.2, 0.4, on(2021, 1, 20), open, 182, 3}),
      make({"W05", "click wrench, pit 2", "maker C", {Setting, A}, 5, 25, 0.25, "3/8 in square"},
           {-0.4, -0.12, 0.25, 0.5, on(2021, 1, 20), open, 182, 3}),
      make({"W06", "click wrench, pit 1", "maker A", {Setting, A}, 10, 60, 0.5, "3/8 in square"},
           {0.1, 0.05, 0.2, 0.4, on(2020, 12, 14), open, 182, 3}),
      make({"W07", "click wrench, pit 2", "maker A", {Setting, A}, 10, 60, 0.5, "3/8 in square"},
           {-0.6, 0.66, 0.15, 0.35, on(2021, 1, 11), open, 182, 0}),
      make({"W08", "click wrench, bay 1", "maker B", {Setting, A}, 20, 100, 1, "1/2 in square"},
           {0.9, 0.15, 0.25, 0.5, on(2021, 3, 2), open, 182, 3.2}),
      make({"W09", "click wrench, bay 2", "maker B", {Setting, A}, 20, 100, 1, "1/2 in square"},
           {0.2, 0.2, 0.3, 0.6, on(2021, 3, 2), open, 182, 3.2}),
      make({"W10",
            "click wrench, bay 3, pounds and feet",
            "maker D",
            {Setting, A},
            20,
            150,
            1,
            "1/2 in square",
            Unit::PoundForceFoot},
           {-1.1, 0.1, 0.3, 0.6, on(2021, 4, 13), open, 340, 3.2}),
      make({"W11", "click wrench, wheels", "maker B", {Setting, A}, 40, 200, 1, "1/2 in square"},
           {0.4, 1.05, 0.35, 0.6, on(2021, 2, 16), open, 340, 4.0}),
      make({"W12", "click wrench, wheels", "maker B", {Setting, A}, 40, 200, 1, "1/2 in square"},
           {0.7, 0.25, 0.3, 0.6, on(2021, 2, 16), open, 340, 3.2}),
      make({"W13", "click wrench, axle", "maker B", {Setting, A}, 60, 300, 2, "1/2 in square"},
           {-0.2, 0.18, 0.3, 0.5, on(2021, 5, 18), open, 340, 3.2}),
      make({"W14", "click wrench, lorries", "maker E", {Setting, A}, 100, 500, 5, "3/4 in square"},
           {1.0, 0.12, 0.35, 0.7, on(2021, 6, 8), open, 350, 3.2}),
      make({"W15", "click wrench, gritter bay", "maker E", {Setting, A}, 100, 500, 5, "3/4 in square"},
           {0.5, 0.3, 0.35, 0.7, on(2021, 6, 8), on(2025, 8, 1), 350, 3.2}),
      make({"W16", "click wrench, heavy wheels", "maker E", {Setting, A}, 200, 800, 5, "3/4 in square"},
           {-0.9, -0.2, 0.4, 0.7, on(2021, 9, 6), open, 350, 3.2}),
      make({"W17", "wrench with display", "maker F", {Indicating, C}, 10, 100, 0.1, "3/8 in square"},
           {0.1, 0.04, 0.15, 0.2, on(2022, 3, 15), open, 350, 3}),
      make({"W18", "wrench with display, long", "maker F", {Indicating, C}, 30, 300, 0.1, "1/2 in square"},
           {-0.2, 0.05, 0.15, 0.2, on(2022, 3, 15), open, 350, 3}),
      make({"W19", "dial wrench", "maker D", {Indicating, B}, 20, 140, 2, "1/2 in square"},
           {2.1, 0.55, 0.4, 0.8, on(2021, 10, 12), on(2026, 3, 1), 365, 0}),
      make({"W20", "fixed wrench for filter covers", "maker C", {Setting, B}, 0, 25, 0, "3/8 in square"},
           {0.5, 0.1, 0.2, 0.4, on(2022, 6, 21), open, 350, 3}),
      make({"W21", "wrench set at the bench", "maker D", {Setting, C}, 20, 100, 0, "1/2 in square"},
           {0.8, 0.2, 0.3, 0.6, on(2022, 6, 21), open, 350, 3.2}),
      make({"W22", "click wrench, new van bay", "maker C", {Setting, A}, 5, 25, 0.25, "3/8 in square"},
           {0.2, 0.1, 0.2, 0.4, on(2026, 6, 16), on(2026, 6, 16), 0, 0}),
      make({"W23", "wrench with display, small", "maker F", {Indicating, C}, 1, 20, 0.01, "1/4 in square"},
           {-0.3, 0.06, 0.2, 0.3, on(2023, 1, 24), open, 350, 3}),
      make({"W24", "click wrench, just bought", "maker B", {Setting, A}, 20, 100, 1, "1/2 in square"},
           {0, 0, 0, 0, on(2027, 1, 1), on(2026, 1, 1), 0, 0}),
  };
}

std::vector<StatusEvent> demoStatusEvents() {
  return {{"W03", ToolStatus::Retired, "ratchet worn; replaced by W06", on(2024, 2, 12)},
          {"W19", ToolStatus::Held, "failed its check as found; waits for a new spring", on(2026, 3, 2)}};
}

std::vector<Reference> demoReferences() {
  return {{.id = "R1",
           .description = "torque transducer 1 to 25 N·m with display",
           .serial = "t118",
           .certificate = "K-2026-0117",
           .calibrated = on(2026, 2, 9),
           .due = on(2028, 2, 9),
           .expandedUncertaintyPercent = 0.4,
           .coverageFactor = 2,
           .errorPercent = 0.05},
          {.id = "R2",
           .description = "torque transducer 10 to 250 N·m with display",
           .serial = "t241",
           .certificate = "K-2026-0118",
           .calibrated = on(2026, 2, 9),
           .due = on(2028, 2, 9),
           .expandedUncertaintyPercent = 0.5,
           .coverageFactor = 2,
           .errorPercent = -0.1},
          {.id = "R3",
           .description = "torque transducer 100 to 1000 N·m with display",
           .serial = "t377",
           .certificate = "K-2025-0902",
           .calibrated = on(2025, 9, 1),
           .due = on(2027, 9, 1),
           .expandedUncertaintyPercent = 0.6,
           .coverageFactor = 2,
           .errorPercent = 0.1}};
}

}  // namespace steadyturn
