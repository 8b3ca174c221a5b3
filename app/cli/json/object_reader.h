// Reads the fields of one JSON object strictly. What is missing, unknown or of the wrong type becomes a problem named
// by its JSON path ("points[0].readings.unit"); the value returned then is a stand-in that nobody uses, because the
// document is refused as a whole once all of it was looked at.
#pragma once

#include <initializer_list>
#include <optional>
#include <string>
#include <string_view>

#include "date.h"
#include "json_document.h"
#include "torque.h"

namespace steadyturn {

class ObjectReader {
 public:
  // `path` is empty for the document itself. Fields not in `known` are refused.
  ObjectReader(const Json& value, std::string path, Problems& problems,
               std::initializer_list<std::string_view> known);

  // The field, or nothing where it is absent or null.
  const Json* find(std::string_view name) const;
  // The field; its absence is a problem that says what it should be.
  const Json* require(std::string_view name, std::string_view accepted);
  std::string pathOf(std::string_view name) const;

  double number(std::string_view name);
  std::optional<double> optionalNumber(std::string_view name);
  int wholeNumber(std::string_view name);
  // The text of a field, or nothing and a problem that says what is accepted.
  std::optional<std::string> text(std::string_view name, std::string_view accepted);
  Date date(std::string_view name);
  StatedTorque torque(std::string_view name);
  std::optional<StatedTorque> optionalTorque(std::string_view name);
  Unit unit(std::string_view name);

  // The value of a result of the core, whose problems name the fields of this object; they get this object's path.
  template <typename T>
  T adopt(Result<T> result) {
    if (result) return *std::move(result);
    complain(std::move(result.error()));
    return T{};
  }

 private:
  void complain(Problems problems);

  const Json* object_ = nullptr;  // nothing where the value isn't an object
  std::string path_;
  Problems& problems_;
};

// A number of an array or field, or nothing and a problem.
std::optional<double> readNumber(const Json& value, const std::string& path, Problems& problems);
// An array, or nothing and a problem.
const Json::array_t* readArray(const Json* value, const std::string& path, Problems& problems);
std::string elementPath(std::string_view path, std::size_t index);

}  // namespace steadyturn
