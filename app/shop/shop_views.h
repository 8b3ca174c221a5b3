// What the application layer hands to its faces, and what they hand in: plain values.
#pragma once

#include <array>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "bench_record.h"
#include "certificate.h"
#include "choose.h"
#include "due_work.h"
#include "history_chart.h"
#include "job_record.h"
#include "job_sheet.h"
#include "recall.h"
#include "recall_report.h"
#include "records.h"
#include "synonym.h"
#include "tool_outlook.h"
#include "tool_register.h"
#include "unit_guard.h"

namespace steadyturn {

// The shop's own rules.
struct Policy {
  int intervalDays = 365;  // ISO 6789-1:2017: 12 months where a shop has no procedure of its own
  double confidence = 0.95;
  DecisionRule rule = DecisionRule::Simple;
  double partLimitRisk = defaultPartLimitRisk;
};

// Who the shop is, as its papers say.
struct ShopFacts {
  std::string name;     // "Municipal vehicle depot"
  std::string place;    // where the bench stands
  std::string country;  // ISO 3166-1 alpha-2, such as "DE"; "" when not said
};

struct CheckPlan {
  std::vector<StatedTorque> setPoints;
  int readings = 0;
  int exercisePulls = 0;
  double limitPercent = 0;
  std::string source;
};

// A check as it is being typed.
struct DraftPoint {
  std::string target;                 // as typed, '.' as decimal mark
  std::vector<std::string> readings;  // as typed; empty texts are passed over
};
struct CheckDraft {
  std::string tool, reference, by;
  Date date{};
  Phase phase = Phase::AsFound;
  Unit unit = Unit::NewtonMetre;  // of targets and readings
  Direction direction = Direction::Clockwise;
  std::optional<double> temperatureC, humidityPercent;
  std::string note;
  std::vector<DraftPoint> points;
};

// A draft that was saved and not yet recorded: to be offered again at the next start.
struct SavedDraft {
  CheckDraft draft;
  std::string savedAt;  // UTC, "2026-03-14T09:26:53.589Z"
};

// Why a reference standard should not be used for a tool on a day. To be named before the first reading.
enum class ReferenceDoubtKind { PastDue, RangeNotCovered, TooUncertain };
struct ReferenceDoubt {
  ReferenceDoubtKind kind;
  std::string text;  // "REF-1 was due on 2026-01-31: its figures are no longer vouched for."
};

// A bench set-up as it is being typed: the runs of ISO 6789-2 on one tool, for all tools of its model.
struct BenchSetupPlan {
  ToolModel model;
  StatedTorque target;         // the model's lowest set-point
  std::vector<RunRules> runs;  // in the order of allSetupRuns; each may be left out
};
struct BenchSetupDraft {
  std::string tool, reference, by;
  Date date{};
  Unit unit = Unit::NewtonMetre;                          // of target and readings
  std::string target;                                     // as typed, '.' as decimal mark
  std::array<TypedSeries, allSetupRuns.size()> readings;  // by run; empty texts are passed over, none: not taken
  // By run, %, as typed: for runs that were not taken but are known from elsewhere.
  std::array<std::string, allSetupRuns.size()> typedSpans;
  std::string basis;  // where typed spans come from; needed with them
  std::string note;
};

// One source of a set-point's uncertainty budget (ISO 6789-2) and where its figure came from.
struct BudgetLine {
  std::string source;  // "reference", "resolution", "reproducibility", "drive", "interface", "loading_point", …
  double standardUncertaintyPercent = 0;
  double sharePercent = 0;  // of the variance; all lines together 100, or 0 where nothing is known
  bool evaluated = false;
  std::string origin;  // "measured at this bench, 2026-02-03 (set-up 4)", "not evaluated, counts as 0" …
};
struct BudgetView {
  StatedTorque target;
  std::vector<BudgetLine> lines;  // always the seven, in the standard's order
  double standardUncertaintyPercent = 0;
  double coverageFactor = 2;
  double expandedUncertaintyPercent = 0;
  double meanDeviationPercent = 0;
  double referenceErrorPercent = 0;
  double intervalPercent = 0;  // W′ = |mean| + W + |reference's error|
  double limitPercent = 0;
  DecisionRule rule = DecisionRule::Simple;
  Verdict verdict = Verdict::Fail;
  double conformityProbability = 0;
  std::string risk;  // the chance that the verdict is wrong, in words
};

// Where a tool stands today, the gravest first.
enum class Standing { Retired, Held, Failed, NeverChecked, Overdue, Leaving, DueSoon, Ready };
std::string_view writeStanding(Standing standing);  // "retired", "held", "failed", "never checked", "overdue", …

struct DriftSeries {
  StatedTorque target;
  Direction direction = Direction::Clockwise;  // each direction of use is a series of its own (ISO 6789-1)
  std::vector<PointSummary> points;            // by date, as found before as left
  DriftResult drift;                           // the tool's own regression
  FleetWord fleet;                             // what tools like it say
  ToolOutlook outlook;                         // what counts
};

struct ToolDrift {
  Tool tool;
  std::vector<DriftSeries> series;         // rising by target, clockwise first; empty when never checked
  std::optional<Date> dueDate;             // the earliest of the series' outlooks
  DriftState state = DriftState::Unknown;  // the worst of the series' outlooks
  std::size_t worst = 0;                   // index of the deciding series
};

struct ToolOverview {
  Tool tool;
  Standing standing = Standing::NeverChecked;
  std::optional<Date> lastCheck;
  std::optional<Verdict> lastVerdict;
  std::optional<Date> dueDate;
  DriftState state = DriftState::Unknown;
  std::optional<StatedTorque> worstTarget;  // the set-point that decides
  std::optional<double> slopePercentPerYear;
  std::optional<double> predictedPercent;  // at worstTarget, today
  std::optional<Interval> predictionInterval;
  std::optional<OutlookBasis> basis;  // of the two
  std::string basisWords;             // how much is borrowed from the fleet, or that it is assumed
  double limitPercent = 0;
};

// A tool among all: the history of the set-point that decides, without events and uses, and where it stands.
struct FleetStory {
  HistoryData history;  // no points: never checked
  Standing standing = Standing::NeverChecked;
};

struct Saved {
  std::vector<std::string> warnings;  // things a person should look at, though it was taken in
};

struct FastenerChoice {
  Fastener fastener;
  std::vector<std::string> warnings;
  Choice choice;
};

// A fastener as it is being entered: what its thread could sensibly take, and what to ask before it is saved.
struct FastenerQuestions {
  std::optional<SensibleTorque> sensible;  // absent: no ISO metric thread
  std::optional<UnitQuestion> unit;        // the torque lies outside and may be in another unit
  bool needsPartLimit = false;             // plastic without a limit
  std::vector<std::string> warnings;       // the same in words
};

// A job sheet to be opened.
struct JobDraft {
  std::string job, vehicle;
  std::string service;                 // empty: without a list
  std::vector<std::string> fasteners;  // besides the service's
  Date date{};
  std::string by;
};

struct RecallList {
  std::string tool;
  std::optional<Date> lastGood;
  std::optional<Date> foundBad;         // absent: no failed check, nothing in doubt
  std::vector<RecallLine> tightenings;  // worst first
  std::int64_t failedCheck = 0;         // 0: none
  std::optional<RecallClosing> closing{};
  std::string borrowed{};  // what the figures by the fleet rest on; empty: the contract's interpolation says it all

  int undecided() const;
};

// What is decided about one tightening in doubt.
struct RecallChoice {
  std::int64_t tightening = 0;
  RecallAction action = RecallAction::Accept;
  std::string reason;  // needed to accept
  std::string by;
};

enum class TableKind { Tools, References, Fasteners, Checks, Tightenings };
Result<TableKind> parseTableKind(std::string_view typed);
std::string_view writeTableKind(TableKind kind);

struct ImportOptions {
  bool decimalComma = false;
  bool again = false;  // take a file whose content was imported before, where its rows are not duplicates
  std::string by;      // for rows that name nobody
};
struct ExportOptions {
  bool decimalComma = false;
};
struct ImportReport {
  std::int64_t rows = 0;     // data rows read
  std::int64_t records = 0;  // tools, checks … written
  std::vector<std::string> warnings;
};

}  // namespace steadyturn
