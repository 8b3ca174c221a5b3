// Which wrench, at which setting: ranks tools for a fastener by what they will really deliver today.
#pragma once

#include <string>
#include <vector>

#include "best_setting.h"
#include "drift.h"
#include "tool_kind.h"
#include "tool_outlook.h"

namespace steadyturn {

// What a tool's history says at one set-point, as of today.
struct SetPointOutlook {
  StatedTorque target;
  DriftResult drift;                      // evaluated as of the day asked for
  std::optional<ToolOutlook> outlook{};   // what counts, where the tool's fleet was asked; else its own drift does
  double newestMeanDeviationPercent = 0;  // of the newest check at this set-point
  Uncertainty pull{};                     // scatter of that check's readings: s, n − 1
  double referenceStandardUncertaintyPercent = 0;
};

// Why a tool is not offered. Data; a face words it (see writeRefusal).
enum class RefusalKind { Retired, Held, Overdue, NoCheck, FailedLastCheck, OutOfRange, NotSettable, PartLimitRisk };
struct Refusal {
  RefusalKind kind;
  std::string detail;  // the hold's reason, the due date, the range …
};
std::string writeRefusal(const Refusal& refusal);

struct Candidate {
  std::string tool;
  ToolKind kind;
  std::optional<StatedTorque> minimum{};  // absent: 20 % of the maximum is taken as the lowest sensible setting
  StatedTorque maximum;
  std::optional<StatedTorque> resolution{};  // absent: 1 % of the maximum is assumed for a tool that can be set
  double limitPercent = 0;                   // permissible deviation
  std::optional<Refusal> refusal{};          // already out: retired, held, overdue, no check, failed
  std::vector<SetPointOutlook> outlooks;     // rising by target; not empty unless refused
};

struct Demand {
  StatedTorque target;
  std::optional<StatedTorque> low{}, high{};  // absent: ±10 % of the target (stated with a warning)
  std::optional<StatedTorque> partLimit{};
  std::optional<Adapter> adapter{};
  double partLimitRisk = defaultPartLimitRisk;
};
// The demand's window: low…high, or target ±10 % where either is absent.
Window windowOf(const Demand& demand);

struct Option {
  std::string tool;
  StatedTorque setting;
  DeliveryResult delivery;
  DriftState driftState = DriftState::Unknown;
  // Of the set-points around the setting, the least certain. Assumption: location = newest mean, u = half the
  // permissible deviation (see tool_outlook.h).
  OutlookBasis basis = OutlookBasis::OwnRecord;
  bool assumedDrift() const { return basis == OutlookBasis::Assumption; }
};

struct RefusedTool {
  std::string tool;
  Refusal refusal;
};

struct Choice {
  std::vector<Option>
      options;  // best first: largest probability within, then smallest over the part's limit, then tool
  std::vector<RefusedTool> refused;  // in the order given
};

// Deviation and its standard uncertainty at a setting: interpolated linearly between set-points, held constant
// outside them; degrees of freedom the smaller of the two neighbours'; pull and reference from the nearest set-point.
DeliveryInput deliveryAt(const Candidate& candidate, const Demand& demand, StatedTorque setting);

// A tool with a fixed value is taken at that value; an adjustable one without a scale is refused. Out of range: no
// graduation's expected torque lies in the window. Part's limit at risk: no setting keeps both window and risk.
Choice choose(const Demand& demand, const std::vector<Candidate>& candidates);

}  // namespace steadyturn
