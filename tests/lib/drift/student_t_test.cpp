#include "student_t.h"

#include <gsl/gsl_cdf.h>
#include <gtest/gtest.h>

#include <cmath>
#include <limits>

namespace steadyturn {
namespace {

void expectClose(double actual, double expected, double relative) {
  EXPECT_NEAR(actual, expected, relative * std::abs(expected));
}

TEST(StudentT, TailsAgreeWithGsl) {
  for (const double df : {1.0, 2.0, 3.5, 7.0, 26.0, 34.0, 1234.5}) {
    for (const double t : {-12.0, -3.0, -0.5, 0.0, 0.1, 1.96, 4.0, 40.0}) {
      SCOPED_TRACE(testing::Message() << "t " << t << ", df " << df);
      // Above 30 degrees of freedom GSL itself uses a series, good to some eight digits in the far tail.
      const double relative = df > 30 ? 1e-7 : 1e-10;
      expectClose(studentLower(t, df), gsl_cdf_tdist_P(t, df), relative);
      expectClose(studentUpper(t, df), gsl_cdf_tdist_Q(t, df), relative);
    }
  }
}

// Numerical integration of the density with thirty digits: where GSL's series and Boost part, Boost holds.
TEST(StudentT, AFarTailByIntegration) { expectClose(studentLower(-12, 34.0), 4.49989304374437e-14, 1e-12); }

TEST(StudentT, InfiniteDegreesOfFreedomAreTheNormalDistribution) {
  for (const double z : {-8.0, -1.0, 0.0, 0.3, 2.0, 6.0, 30.0}) {
    expectClose(studentLower(z, {}), gsl_cdf_ugaussian_P(z), 1e-12);
    expectClose(studentUpper(z, {}), gsl_cdf_ugaussian_Q(z), 1e-12);
  }
}

TEST(StudentT, QuantilesAgreeWithGsl) {
  for (const double confidence : {0.5, 0.9, 0.95, 0.99, 0.999}) {
    for (const double df : {1.0, 2.0, 5.0, 6.7, 30.0, 500.0}) {
      expectClose(studentQuantile(confidence, df), gsl_cdf_tdist_Pinv((1 + confidence) / 2, df), 1e-9);
    }
    expectClose(studentQuantile(confidence, {}), gsl_cdf_ugaussian_Pinv((1 + confidence) / 2), 1e-12);
  }
}

// Any table of Student's t, two-sided 95 %: 12.706, 4.303, 2.571, 2.042 for 1, 2, 5, 30 degrees of freedom; 1.960
// normal (JCGM 100:2008, table G.2, prints 12.71, 4.30, 2.57, 2.04, 1.960; third decimals from memory).
TEST(StudentT, QuantilesOfThePrintedTable) {
  EXPECT_NEAR(studentQuantile(0.95, 1), 12.706, 0.0005);
  EXPECT_NEAR(studentQuantile(0.95, 2), 4.303, 0.0005);
  EXPECT_NEAR(studentQuantile(0.95, 5), 2.571, 0.0005);
  EXPECT_NEAR(studentQuantile(0.95, 30), 2.042, 0.0005);
  EXPECT_NEAR(studentQuantile(0.95, {}), 1.960, 0.0005);
}

TEST(StudentT, NothingIsThrownAtTheEdges) {
  constexpr double infinity = std::numeric_limits<double>::infinity();
  for (const std::optional<double> df : {std::optional<double>(), std::optional<double>(3.0)}) {
    EXPECT_EQ(studentLower(-infinity, df), 0);
    EXPECT_EQ(studentLower(infinity, df), 1);
    EXPECT_EQ(studentUpper(infinity, df), 0);
    EXPECT_GE(studentUpper(1e300, df), 0);
  }
  EXPECT_GT(studentQuantile(0.95, 1e-3), 1e30);
}

}  // namespace
}  // namespace steadyturn
