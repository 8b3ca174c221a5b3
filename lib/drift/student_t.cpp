#include "student_t.h"

#include <boost/math/distributions/normal.hpp>
#include <boost/math/distributions/students_t.hpp>

namespace steadyturn {

namespace {

namespace policies = boost::math::policies;

// Double throughout: long double costs several times the time and its extra digits are cut off on return.
// Overflow and underflow are expected (a far tail is 0), so nothing is thrown.
using Quiet =
    policies::policy<policies::promote_double<false>, policies::domain_error<policies::ignore_error>,
                     policies::pole_error<policies::ignore_error>, policies::overflow_error<policies::ignore_error>,
                     policies::underflow_error<policies::ignore_error>,
                     policies::evaluation_error<policies::ignore_error>>;
using Student = boost::math::students_t_distribution<double, Quiet>;
using Normal = boost::math::normal_distribution<double, Quiet>;

}  // namespace

double studentLower(double t, std::optional<double> degreesOfFreedom) {
  return degreesOfFreedom ? cdf(Student(*degreesOfFreedom), t) : cdf(Normal(), t);
}

double studentUpper(double t, std::optional<double> degreesOfFreedom) { return studentLower(-t, degreesOfFreedom); }

double studentQuantile(double confidence, std::optional<double> degreesOfFreedom) {
  const double tail = (1 - confidence) / 2;
  return degreesOfFreedom ? quantile(complement(Student(*degreesOfFreedom), tail))
                          : quantile(complement(Normal(), tail));
}

}  // namespace steadyturn
