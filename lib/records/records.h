// What a shop keeps, as plain values: tools, reference standards, fasteners, checks, tightenings. The store writes
// them, the application layer validates them, reports and screens show them.
#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "check.h"
#include "date.h"
#include "drift.h"
#include "stages.h"
#include "torque.h"

namespace steadyturn {

enum class ToolStatus { InService, Held, Retired };
std::string_view writeToolStatus(ToolStatus status);  // "in service", "held", "retired"
Result<ToolStatus> parseToolStatus(std::string_view typed);

struct Tool {
  std::string id;  // the shop's own mark on the tool
  std::string description, maker, serial;
  ToolKind kind;
  Unit unit = Unit::NewtonMetre;  // of minimum, maximum and resolution
  std::optional<double> minimum;  // lowest marked value
  double maximum = 0;
  std::optional<double> resolution;    // one graduation
  std::string drive;                   // output drive, "1/2 in square"
  std::optional<int> intervalDays;     // absent: the shop's policy
  std::optional<double> limitPercent;  // absent: what ISO 6789-1 permits
  ToolStatus status = ToolStatus::InService;
  std::string statusReason;  // why it is held or retired

  StatedTorque maximumTorque() const { return {maximum, unit}; }
  std::optional<StatedTorque> minimumTorque() const;
  std::optional<StatedTorque> resolutionTorque() const;
  // ± %: the tool's own limit, or the permissible deviation of its kind.
  double permittedPercent() const;
};

struct Reference {
  std::string id, description, serial, certificate;
  std::optional<Date> calibrated, due;
  double expandedUncertaintyPercent = 0;
  std::optional<double> coverageFactor;  // absent: 2
  std::optional<double> errorPercent;    // absent: 0

  ReferenceUncertainty uncertainty() const;
};

struct Fastener {
  std::string id, assembly, component;
  std::string thread;         // "M14x1.5", as written in the source; empty when not given
  std::string propertyClass;  // "8.8"; empty when not given
  std::string partMaterial;   // "plastic" is what the guard looks for
  std::string drive;
  Unit unit = Unit::NewtonMetre;  // of target, low, high and partLimit
  double target = 0;
  std::optional<double> low, high;
  std::optional<double> angleDeg;   // turned on after the torque
  std::optional<double> partLimit;  // never to be passed
  std::string seal;
  std::optional<bool> renew;  // the seal or part is renewed every time
  std::string lubrication, seatCheck, source, revision;
  int number = 1;              // the shop's own count of revisions of this fastener
  std::string revisionReason;  // why this revision replaced the one before
  TighteningStages stages{};  // in order; empty: the target, then the angle. The last torque among them is the target
  std::string sequence{};     // of several screws: "1 4 2 5 3 6", "cross pattern, from the middle outwards"
  std::string limitBasis{};   // where partLimit comes from when it is no value of the part's own data; else empty
  std::string enteredBy{};
  std::string approvedBy{};  // filled on reading; empty: not released
  std::optional<Date> approvedOn{};

  bool plastic() const;         // partMaterial says plastic, in whatever case or company
  bool needsPartLimit() const;  // plastic without a limit
  bool released() const { return !approvedBy.empty(); }
  TighteningStages steps() const;  // the stages, or the target and then the angle
  StatedTorque targetTorque() const { return {target, unit}; }
};

// A set-point of a recorded check: what was read, and what was made of it at the time.
struct CheckPoint {
  StatedTorque target;
  std::vector<std::string> readings;  // as typed, '.' as the decimal mark, in the target's unit
  // Stored facts of the evaluation (percent).
  double meanDeviation = 0;
  std::optional<double> repeatability{};  // s of the readings' deviations
  double standardUncertainty = 0;         // w
  double interval = 0;                    // W′
  double conformityProbability = 0;
  Verdict verdict = Verdict::Fail;
};

enum class Direction { Clockwise, Counterclockwise };
std::string_view writeDirection(Direction direction);  // "clockwise", "counterclockwise"
Result<Direction> parseDirection(std::string_view typed);

struct Check {
  std::int64_t id = 0;  // given by the store
  std::string tool;
  Date date{};
  Phase phase = Phase::AsFound;
  std::string reference;  // empty: not known (an old record)
  std::string by;
  Direction direction = Direction::Clockwise;
  std::optional<double> temperatureC, humidityPercent;
  std::string note;
  // What the evaluation went by.
  double limitPercent = 0;
  DecisionRule rule = DecisionRule::Simple;
  ReferenceUncertainty referenceUncertainty;
  VariationSpans variation;
  Verdict verdict = Verdict::Fail;
  std::vector<CheckPoint> points;
  // A correction names the check it replaces and why.
  std::optional<std::int64_t> corrects;
  std::string correctionReason;
  std::optional<std::int64_t> correctedBy;  // filled on reading
};

// One set-point of one check, without its readings: what drift needs.
struct PointSummary {
  std::int64_t check = 0;
  std::string tool;
  Date date{};
  Phase phase = Phase::AsFound;
  StatedTorque target;
  int readings = 0;
  double meanDeviation = 0;
  std::optional<double> repeatability;
  double standardUncertainty = 0;
  double referenceStandardUncertainty = 0;  // %, expanded / k
  Verdict verdict = Verdict::Fail;
  Direction direction = Direction::Clockwise;
};

struct Tightening {
  std::int64_t id = 0;
  std::string job, vehicle;
  Date date{};
  std::string fastener;
  int fastenerNumber = 1;  // the fastener's revision that was used
  std::string tool;
  std::string setting;  // as typed
  Unit unit = Unit::NewtonMetre;
  std::optional<bool> seatChecked;
  std::string by;
  std::optional<int> stagesDone{};  // of the fastener's steps
  std::optional<bool> sealRenewed{};

  StatedTorque settingTorque() const;
};

}  // namespace steadyturn
