// Reads what was typed for options into values; all that is wrong is kept, so that it can be told at once.
#pragma once

#include <optional>
#include <string>

#include "date.h"
#include "torque.h"

namespace steadyturn {

class TypedValues {
 public:
  // Where `text` is empty: nothing, for the optional ones; a problem for the others.
  double number(const std::string& text, const std::string& field);
  std::optional<double> optionalNumber(const std::string& text, const std::string& field);
  std::optional<int> optionalWhole(const std::string& text, const std::string& field);
  std::optional<Date> optionalDate(const std::string& text, const std::string& field);
  Unit unit(const std::string& text, const std::string& field);
  std::optional<bool> flag(const std::string& text, const std::string& field);  // yes, no

  template <typename T>
  T valueOf(Result<T> result) {
    if (result) return *std::move(result);
    problems_.insert(problems_.end(), result.error().begin(), result.error().end());
    return T{};
  }

  void refuse(Problem problem) { problems_.push_back(std::move(problem)); }
  const Problems& problems() const { return problems_; }

 private:
  Problems problems_;
};

}  // namespace steadyturn
