// Evaluation of a check of a torque tool against a reference: ISO 6789-1 (every reading within the
// permissible deviation), ISO 6789-2 (uncertainty budget, interval W′), JCGM 106 (probability of conformity),
// ILAC-G8:09/2019 (verdicts).
#pragma once

#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "tool_kind.h"

namespace steadyturn {

// Deviation of one reading, %: a = (Xa − Xr) / Xr × 100 (ISO 6789-1:2017). Xa what the tool shows or is set
// to, Xr what the reference measured. A tool with a > 0 delivers less than it says. REQUIRES: reference > 0.
double deviationPercent(double toolValue, double referenceValue);

struct ReferenceUncertainty {
  double expandedPercent = 0;  // relative expanded uncertainty, %
  double coverageFactor = 2;   // > 0
  double errorPercent = 0;     // the reference's own known error b_e, %
};

// Spans b = largest − smallest mean, % (ISO 6789-2). A missing one counts as 0 and is listed as not evaluated.
struct VariationSpans {
  std::optional<double> reproducibility{};
  std::optional<double> drive{};
  std::optional<double> interface {};
  std::optional<double> loadingPoint{};
};

enum class DecisionRule { Simple, Guarded };
// In order of severity, best first (ILAC-G8:09/2019, non-binary statement with guard band).
enum class Verdict { Pass, ConditionalPass, ConditionalFail, Fail };
std::string_view writeRule(DecisionRule rule);  // "simple", "guarded"
Result<DecisionRule> parseRule(std::string_view typed);
std::string_view writeVerdict(Verdict verdict);  // "pass", "conditional pass", "conditional fail", "fail"
Result<Verdict> parseVerdict(std::string_view typed);

struct SetPointReadings {
  StatedTorque target;                   // Xa, > 0
  std::vector<StatedTorque> readings{};  // Xr, each > 0, at least one
};

struct CheckInput {
  ToolKind kind;
  std::optional<StatedTorque> minimum{};  // lowest marked value; only for the set-points asked for
  StatedTorque maximum;
  std::optional<StatedTorque> resolution{};  // one graduation of the tool
  std::optional<double> limitPercent{};      // absent: permissibleDeviationPercent
  ReferenceUncertainty reference;
  VariationSpans variation;
  DecisionRule rule = DecisionRule::Simple;
  std::vector<SetPointReadings> points{};
};

struct BudgetEntry {
  std::string_view
      source;  // "reference", "resolution", "reproducibility", "drive", "interface", "loading_point", "repeatability"
  double standardUncertaintyPercent;
};

struct PointResult {
  StatedTorque target;
  std::vector<double> deviationsPercent{};
  double meanDeviationPercent = 0;
  std::optional<double> repeatabilityPercent{};  // sample standard deviation (n − 1); absent with one reading
  double standardUncertaintyPercent = 0;         // w, ISO 6789-2
  double coverageFactor = 2;
  double expandedUncertaintyPercent = 0;  // W = k w
  double intervalPercent = 0;             // W′ = |mean| + W + |b_e|
  bool withinLimit = false;               // every reading within ± limit
  double conformityProbability = 0;       // JCGM 106:2012, 7: normal, mean deviation with w
  Verdict verdict = Verdict::Fail;
  std::vector<BudgetEntry> budget{};
};

// What the check leaves open. Data, not prose: a face words it.
enum class NoteKind { TooFewReadings, SetPointMissing, ReferenceTooUncertain };
struct Note {
  NoteKind kind{};
  std::optional<StatedTorque> target{};  // where it applies
  double found = 0;                      // readings taken; reference's expanded uncertainty %
  double asked = 0;                      // readings asked for; a quarter of the permissible deviation %
};
// "20 N·m: 3 readings, the standard asks for 5 (ISO 6789-1)".
std::string writeNote(const Note& note);

struct CheckResult {
  std::vector<PointResult> points{};  // as given
  Verdict verdict = Verdict::Fail;    // the worst point's
  double limitPercent = 0;
  std::vector<std::string> notEvaluated{};  // budget sources that counted as 0
  std::vector<Note> notes{};
};

// Evaluates a whole check. Problems name the field as the contract's JSON does ("points[0].readings").
Result<CheckResult> evaluateCheck(const CheckInput& input);

// The verdict of one point from its figures (ILAC-G8:09/2019). Simple: pass if withinLimit. Guarded, guard band
// U: pass if |mean| ≤ limit − U, conditional pass ≤ limit, conditional fail ≤ limit + U, else fail; a single
// reading outside makes it conditional fail at best.
Verdict decide(DecisionRule rule, double meanDeviation, double expandedUncertainty, double limit, bool withinLimit);

// P(−limit ≤ true deviation ≤ limit) for a normal estimate (JCGM 106:2012, 7.4). u = 0 gives 0 or 1.
double conformityProbability(double estimate, double standardUncertainty, double low, double high);

}  // namespace steadyturn
