// The same model solved another way: GSL's general least squares (singular values) on a design matrix with one column
// of ones for each segment and one of x. An independent witness for the common slope and its prediction interval.
#pragma once

#include <gsl/gsl_multifit.h>

#include <cmath>
#include <memory>
#include <span>
#include <vector>

namespace steadyturn::testing {

class GslCommonSlope {
 public:
  GslCommonSlope(std::span<const double> x, std::span<const double> y, std::span<const std::size_t> sizes)
      : segments_(sizes.size()),
        design_(gsl_matrix_calloc(x.size(), segments_ + 1)),
        observed_(gsl_vector_alloc(x.size())),
        coefficients_(gsl_vector_alloc(segments_ + 1)),
        covariance_(gsl_matrix_alloc(segments_ + 1, segments_ + 1)) {
    std::size_t row = 0;
    for (std::size_t segment = 0; segment < segments_; ++segment) {
      for (std::size_t i = 0; i < sizes[segment]; ++i, ++row) {
        gsl_matrix_set(design_.get(), row, segment, 1);
        gsl_matrix_set(design_.get(), row, segments_, x[row]);
        gsl_vector_set(observed_.get(), row, y[row]);
      }
    }
    auto* work = gsl_multifit_linear_alloc(x.size(), segments_ + 1);
    gsl_multifit_linear(design_.get(), observed_.get(), coefficients_.get(), covariance_.get(), &squares_, work);
    gsl_multifit_linear_free(work);
    variance_ = squares_ / static_cast<double>(x.size() - segments_ - 1);
  }

  double slope() const { return gsl_vector_get(coefficients_.get(), segments_); }
  double slopeError() const { return std::sqrt(gsl_matrix_get(covariance_.get(), segments_, segments_)); }
  double residual() const { return std::sqrt(variance_); }
  double at(double x, std::size_t segment) const { return estimate(x, segment).first; }
  // Of one more observation: its own scatter besides the fitted value's error.
  double predictionError(double x, std::size_t segment) const {
    const double fitted = estimate(x, segment).second;
    return std::sqrt(variance_ + fitted * fitted);
  }

 private:
  struct Free {
    void operator()(gsl_matrix* m) const { gsl_matrix_free(m); }
    void operator()(gsl_vector* v) const { gsl_vector_free(v); }
  };
  using Matrix = std::unique_ptr<gsl_matrix, Free>;
  using Vector = std::unique_ptr<gsl_vector, Free>;

  std::pair<double, double> estimate(double x, std::size_t segment) const {
    const Vector row(gsl_vector_calloc(segments_ + 1));
    gsl_vector_set(row.get(), segment, 1);
    gsl_vector_set(row.get(), segments_, x);
    double value = 0;
    double error = 0;
    gsl_multifit_linear_est(row.get(), coefficients_.get(), covariance_.get(), &value, &error);
    return {value, error};
  }

  std::size_t segments_;
  Matrix design_;
  Vector observed_;
  Vector coefficients_;
  Matrix covariance_;
  double squares_ = 0;
  double variance_ = 0;
};

}  // namespace steadyturn::testing
