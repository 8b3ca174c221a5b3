#include <gsl/gsl_cdf.h>
#include <gtest/gtest.h>
#include <rapidcheck/gtest.h>

#include <cmath>
#include <limits>

#include "check.h"
#include "reference_table.h"

namespace steadyturn {
namespace {

constexpr double unbounded = std::numeric_limits<double>::infinity();

TEST(ConformityProbability, GivesTheExamplesOfJcgm106) {
  const auto table = testing::ReferenceTable::load("conformity.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double low = table.has(row, "low") ? table.figure(row, "low").value : -unbounded;
    const double high = table.has(row, "high") ? table.figure(row, "high").value : unbounded;
    const auto expected = table.figure(row, "probability");
    EXPECT_NEAR(conformityProbability(table.figure(row, "estimate").value,
                                      table.figure(row, "standard_uncertainty").value, low, high),
                expected.value, expected.tolerance)
        << table.text(row, "example");
  }
}

// Guard band of r·U, U = 2u: how often a tool whose estimate stands at the guarded limit is in truth beyond the
// limit (ILAC-G8:09/2019, table of guard bands, from memory; < 2.5 % and < 50 % read in laboratory notices).
TEST(ConformityProbability, KeepsWhatGuardBandsPromise) {
  const double limit = 4;
  const double u = 0.3;
  const auto falseAcceptance = [&](double r) {
    return 1 - conformityProbability(limit - r * 2 * u, u, -unbounded, limit);
  };
  EXPECT_LE(falseAcceptance(1), 0.025);
  EXPECT_LE(falseAcceptance(0.83), 0.05);
  EXPECT_LE(falseAcceptance(1.5), 0.0016);
  EXPECT_NEAR(falseAcceptance(0), 0.5, 1e-12);
  // Against the normal distribution of the GNU Scientific Library: 2.3 %, 4.8 %, 0.13 %.
  for (double r : {0.0, 0.83, 1.0, 1.5}) EXPECT_NEAR(falseAcceptance(r), gsl_cdf_ugaussian_Q(2 * r), 1e-14) << r;
}

RC_GTEST_PROP(ConformityProbability, AgreesWithTheGnuScientificLibrary, ()) {
  const double estimate = *rc::gen::inRange(-8000, 8000) / 1000.0;
  const double u = *rc::gen::inRange(1, 3000) / 1000.0;
  const double limit = 4;
  const double theirs = gsl_cdf_gaussian_P(limit - estimate, u) - gsl_cdf_gaussian_P(-limit - estimate, u);
  RC_ASSERT(std::abs(conformityProbability(estimate, u, -limit, limit) - theirs) < 1e-13);
}

TEST(ConformityProbability, KeepsItsDigitsFarOutside) {
  // Ten and more standard uncertainties beyond the limit, where 1 − Φ in doubles is 0.
  const double expected = gsl_cdf_ugaussian_Q(10) - gsl_cdf_ugaussian_Q(18);
  EXPECT_NEAR(conformityProbability(14, 1, -4, 4) / expected, 1, 1e-10);
  EXPECT_NEAR(conformityProbability(-14, 1, -4, 4) / expected, 1, 1e-10);
}

TEST(ConformityProbability, WithoutUncertaintyIsCertain) {
  EXPECT_EQ(conformityProbability(3.9, 0, -4, 4), 1);
  EXPECT_EQ(conformityProbability(4, 0, -4, 4), 1);
  EXPECT_EQ(conformityProbability(4.1, 0, -4, 4), 0);
  EXPECT_EQ(conformityProbability(-4.1, 0, -4, 4), 0);
}

// ILAC-G8:09/2019, non-binary statement with guard band, as the command-line contract words it.
TEST(Verdict, GuardedChangesAtEachBoundary) {
  const double limit = 4;
  const double band = 1;
  const auto guarded = [&](double mean, bool within = true) {
    return decide(DecisionRule::Guarded, mean, band, limit, within);
  };
  for (double sign : {1.0, -1.0}) {
    EXPECT_EQ(guarded(0), Verdict::Pass);
    EXPECT_EQ(guarded(sign * 2.999), Verdict::Pass);
    EXPECT_EQ(guarded(sign * 3), Verdict::Pass);
    EXPECT_EQ(guarded(sign * 3.001), Verdict::ConditionalPass);
    EXPECT_EQ(guarded(sign * 4), Verdict::ConditionalPass);
    EXPECT_EQ(guarded(sign * 4.001, false), Verdict::ConditionalFail);
    EXPECT_EQ(guarded(sign * 4.001, true), Verdict::ConditionalFail);
    EXPECT_EQ(guarded(sign * 5, false), Verdict::ConditionalFail);
    EXPECT_EQ(guarded(sign * 5.001, false), Verdict::Fail);
  }
}

TEST(Verdict, GuardedWithOneReadingOutsideIsConditionalFailAtBest) {
  EXPECT_EQ(decide(DecisionRule::Guarded, 0, 1, 4, false), Verdict::ConditionalFail);
  EXPECT_EQ(decide(DecisionRule::Guarded, 3.5, 1, 4, false), Verdict::ConditionalFail);
  EXPECT_EQ(decide(DecisionRule::Guarded, 6, 1, 4, false), Verdict::Fail);
}

TEST(Verdict, AGuardBandWiderThanTheLimitLetsNothingPass) {
  EXPECT_EQ(decide(DecisionRule::Guarded, 0, 5, 4, true), Verdict::ConditionalPass);
}

TEST(Verdict, SimpleAsksTheReadingsOnly) {
  EXPECT_EQ(decide(DecisionRule::Simple, 3.9, 9, 4, true), Verdict::Pass);
  EXPECT_EQ(decide(DecisionRule::Simple, 0, 0, 4, false), Verdict::Fail);
}

TEST(Verdict, IsWrittenAndReadInTheContractsWords) {
  EXPECT_EQ(writeVerdict(Verdict::Pass), "pass");
  EXPECT_EQ(writeVerdict(Verdict::ConditionalPass), "conditional pass");
  EXPECT_EQ(writeVerdict(Verdict::ConditionalFail), "conditional fail");
  EXPECT_EQ(writeVerdict(Verdict::Fail), "fail");
  for (Verdict verdict : {Verdict::Pass, Verdict::ConditionalPass, Verdict::ConditionalFail, Verdict::Fail}) {
    EXPECT_EQ(parseVerdict(writeVerdict(verdict)), verdict);
  }
  EXPECT_EQ(writeRule(DecisionRule::Simple), "simple");
  EXPECT_EQ(parseRule("guarded"), DecisionRule::Guarded);
  const auto rule = parseRule("generous");
  ASSERT_FALSE(rule);
  EXPECT_EQ(rule.error()[0], (Problem{.field = "rule", .found = "generous", .accepted = "simple, guarded"}));
  EXPECT_FALSE(parseVerdict(""));
}

}  // namespace
}  // namespace steadyturn
