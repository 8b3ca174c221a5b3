#include "clopper_pearson.h"

#include <boost/math/distributions/binomial.hpp>

namespace steadyturn {

Interval clopperPearson(std::size_t successes, std::size_t trials, double confidence) {
  using Binomial = boost::math::binomial_distribution<double>;
  const auto k = static_cast<double>(successes);
  const auto n = static_cast<double>(trials);
  const double tail = (1 - confidence) / 2;
  return {.low = successes == 0 ? 0.0 : Binomial::find_lower_bound_on_p(n, k, tail),
          .high = successes == trials ? 1.0 : Binomial::find_upper_bound_on_p(n, k, tail)};
}

}  // namespace steadyturn
