#include "refuse_check.h"

#include <fmt/core.h>

#include <cmath>

namespace steadyturn {
namespace {

// Beyond this a figure in % is a slip of the keyboard, and its square would soon not fit a double.
constexpr double largestPercent = 1e9;

// Where a finding lies; spelt only when there is one, for a million readings pass through here.
class Field {
 public:
  Field(const char* name) : name_(name) {}  // NOLINT(google-explicit-constructor): a plain name is a field
  static Field target(std::size_t point) { return {"points[{}].target", point, 0}; }
  static Field readings(std::size_t point) { return {"points[{}].readings.values", point, 0}; }
  static Field reading(std::size_t point, std::size_t i) { return {"points[{}].readings.values[{}]", point, i}; }
  std::string text() const { return fmt::format(fmt::runtime(name_), point_, reading_); }

 private:
  Field(const char* name, std::size_t point, std::size_t reading) : name_(name), point_(point), reading_(reading) {}

  const char* name_;
  std::size_t point_ = 0;
  std::size_t reading_ = 0;
};

class Findings {
 public:
  void refuseUnless(bool good, Field field, std::string_view found, std::string_view accepted) {
    if (good) return;
    problems_.push_back({.field = field.text(), .found = std::string(found), .accepted = std::string(accepted)});
  }
  void refuseUnless(bool good, Field field, double found, std::string_view accepted) {
    if (!good) refuseUnless(good, field, writeNumber(found), accepted);
  }

  bool positiveTorque(StatedTorque torque, Field field) {
    const bool good =
        torque.value > 0 && std::isfinite(torque.value) && std::isfinite(torque.torque().newtonMetres());
    refuseUnless(good, field, torque.value, "a torque above 0");
    return good;
  }

  void percentOfZeroOrMore(double percent, Field field) {
    refuseUnless(percent >= 0 && percent < largestPercent, field, percent, "a figure in %, 0 or more");
  }

  Problems take() { return std::move(problems_); }

 private:
  Problems problems_;
};

void lookAtTool(const CheckInput& check, Findings& findings) {
  findings.refuseUnless(isDefined(check.kind), "tool.class", writeClass(check.kind.cls),
                        "A to E for Type I, A to G for Type II");
  const bool hasMaximum = findings.positiveTorque(check.maximum, "tool.max");
  if (check.minimum && findings.positiveTorque(*check.minimum, "tool.min") && hasMaximum) {
    findings.refuseUnless(check.minimum->in(check.maximum.unit) <= check.maximum.value, "tool.min",
                          check.minimum->value, "a torque not above the maximum");
  }
  if (check.resolution && findings.positiveTorque(*check.resolution, "tool.resolution") && hasMaximum) {
    findings.refuseUnless(check.resolution->in(check.maximum.unit) <= check.maximum.value, "tool.resolution",
                          check.resolution->value, "one graduation of the tool, not above its maximum");
  }
  if (check.limitPercent) {
    findings.refuseUnless(*check.limitPercent > 0 && *check.limitPercent < largestPercent, "limit_percent",
                          *check.limitPercent, "a figure in %, above 0");
  }
}

void lookAtReference(const ReferenceUncertainty& reference, Findings& findings) {
  findings.percentOfZeroOrMore(reference.expandedPercent, "reference.expanded_uncertainty_percent");
  constexpr double smallestFactor = 1e-3;  // the quotient stays finite
  findings.refuseUnless(reference.coverageFactor >= smallestFactor && std::isfinite(reference.coverageFactor),
                        "reference.coverage_factor", reference.coverageFactor, "a number above 0, mostly 2");
  findings.refuseUnless(std::abs(reference.errorPercent) < largestPercent, "reference.error_percent",
                        reference.errorPercent, "a figure in %");
}

void lookAtVariation(const VariationSpans& variation, Findings& findings) {
  const auto look = [&](std::optional<double> span, Field field) {
    if (span) findings.percentOfZeroOrMore(*span, field);
  };
  look(variation.reproducibility, "variation_percent.reproducibility");
  look(variation.drive, "variation_percent.drive");
  look(variation.interface, "variation_percent.interface");
  look(variation.loadingPoint, "variation_percent.loading_point");
}

void lookAtPoint(const SetPointReadings& point, std::size_t index, std::optional<StatedTorque> resolution,
                 Findings& findings) {
  const Field targetField = Field::target(index);
  bool hasTarget = findings.positiveTorque(point.target, targetField);
  if (hasTarget && resolution) {
    // Far below the graduation nothing can be set; an uncertainty of 1e9 % says nothing either.
    hasTarget = resolution->in(point.target.unit) / point.target.value * 100 < largestPercent;
    findings.refuseUnless(hasTarget, targetField, point.target.value, "a torque the tool can be set to");
  }
  findings.refuseUnless(!point.readings.empty(), Field::readings(index), "", "at least one reading");
  for (std::size_t i = 0; i < point.readings.size(); ++i) {
    const StatedTorque reading = point.readings[i];
    const Field field = Field::reading(index, i);
    if (!findings.positiveTorque(reading, field) || !hasTarget) continue;
    const double deviation = deviationPercent(point.target.value, reading.in(point.target.unit));
    findings.refuseUnless(std::abs(deviation) < largestPercent, field, reading.value,
                          "a reading that can be compared with the target");
  }
}

}  // namespace

Problems problemsOf(const CheckInput& check) {
  Findings findings;
  lookAtTool(check, findings);
  lookAtReference(check.reference, findings);
  lookAtVariation(check.variation, findings);
  findings.refuseUnless(!check.points.empty(), "points", "", "at least one set-point with readings");
  // A resolution that was refused above is not held against the points once more.
  const bool usable = check.resolution && check.resolution->value > 0 && std::isfinite(check.resolution->value);
  for (std::size_t i = 0; i < check.points.size(); ++i) {
    lookAtPoint(check.points[i], i, usable ? check.resolution : std::nullopt, findings);
  }
  return findings.take();
}

}  // namespace steadyturn
