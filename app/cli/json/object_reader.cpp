#include "object_reader.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace steadyturn {
namespace {

// The value as a person would recognise it.
std::string shown(const Json& value) {
  if (value.is_string()) return value.get<std::string>();
  if (value.is_object()) return "an object";
  if (value.is_array()) return "an array";
  return value.dump();
}

void expect(Problems& problems, const std::string& path, const Json& found, std::string_view accepted) {
  problems.push_back({.field = path, .found = shown(found), .accepted = std::string(accepted)});
}

std::string listed(std::initializer_list<std::string_view> names) {
  std::string list;
  for (const std::string_view name : names) list.append(list.empty() ? "" : ", ").append(name);
  return list;
}

std::string joined(std::string_view path, std::string_view name) {
  return path.empty() ? std::string(name) : std::string(path).append(".").append(name);
}

std::optional<Unit> readUnit(const Json& value, const std::string& path, Problems& problems) {
  const auto unit = value.is_string() ? parseUnit(value.get_ref<const std::string&>()) : std::nullopt;
  if (!unit) expect(problems, path, value, acceptedUnits());
  return unit;
}

StatedTorque readTorque(const Json& value, const std::string& path, Problems& problems) {
  ObjectReader fields(value, path, problems, {"value", "unit"});
  StatedTorque torque{fields.number("value"), fields.unit("unit")};
  if (torque.value < 0) {
    problems.push_back(
        {.field = fields.pathOf("value"), .found = writeNumber(torque.value), .accepted = "a torque of 0 or more"});
  }
  return torque;
}

}  // namespace

ObjectReader::ObjectReader(const Json& value, std::string path, Problems& problems,
                           std::initializer_list<std::string_view> known)
    : object_(value.is_object() ? &value : nullptr), path_(std::move(path)), problems_(problems) {
  if (object_ == nullptr) {
    expect(problems_, path_.empty() ? "standard input" : path_, value, "an object with " + listed(known));
    return;
  }
  for (const auto& field : object_->items()) {
    if (std::ranges::find(known, field.key()) != known.end()) continue;
    problems_.push_back(
        {.field = pathOf(field.key()), .found = "an unknown field", .accepted = "the fields " + listed(known)});
  }
}

std::string ObjectReader::pathOf(std::string_view name) const { return joined(path_, name); }

const Json* ObjectReader::find(std::string_view name) const {
  if (object_ == nullptr) return nullptr;
  const auto field = object_->find(name);
  return field == object_->end() || field->is_null() ? nullptr : &*field;
}

const Json* ObjectReader::require(std::string_view name, std::string_view accepted) {
  const Json* field = find(name);
  if (field == nullptr && object_ != nullptr) {
    problems_.push_back({.field = pathOf(name), .accepted = std::string(accepted)});
  }
  return field;
}

double ObjectReader::number(std::string_view name) {
  const Json* field = require(name, "a number");
  return field == nullptr ? 0 : readNumber(*field, pathOf(name), problems_).value_or(0);
}

std::optional<double> ObjectReader::optionalNumber(std::string_view name) {
  const Json* field = find(name);
  return field == nullptr ? std::nullopt : readNumber(*field, pathOf(name), problems_);
}

int ObjectReader::wholeNumber(std::string_view name) {
  constexpr std::string_view accepted = "a whole number";
  const Json* field = require(name, accepted);
  if (field == nullptr) return 0;
  const double value = field->is_number() ? field->get<double>() : 0.5;
  if (value == std::floor(value) && std::abs(value) <= std::numeric_limits<int>::max())
    return static_cast<int>(value);
  expect(problems_, pathOf(name), *field, accepted);
  return 0;
}

std::optional<std::string> ObjectReader::text(std::string_view name, std::string_view accepted) {
  const Json* field = require(name, accepted);
  if (field == nullptr) return std::nullopt;
  if (field->is_string()) return field->get<std::string>();
  expect(problems_, pathOf(name), *field, std::string("a text: ").append(accepted));
  return std::nullopt;
}

Date ObjectReader::date(std::string_view name) {
  const auto typed = text(name, "a date such as \"2026-03-14\"");
  return typed ? adopt(parseDate(*typed, name)) : Date{};
}

StatedTorque ObjectReader::torque(std::string_view name) {
  const Json* field = require(name, R"(a torque as {"value": 12.5, "unit": "N.m"})");
  return field == nullptr ? StatedTorque{} : readTorque(*field, pathOf(name), problems_);
}

std::optional<StatedTorque> ObjectReader::optionalTorque(std::string_view name) {
  const Json* field = find(name);
  if (field == nullptr) return std::nullopt;
  return readTorque(*field, pathOf(name), problems_);
}

Unit ObjectReader::unit(std::string_view name) {
  const Json* field = require(name, acceptedUnits());
  return field == nullptr ? Unit::NewtonMetre : readUnit(*field, pathOf(name), problems_).value_or(Unit::NewtonMetre);
}

void ObjectReader::complain(Problems problems) {
  for (Problem& problem : problems) {
    problem.field = pathOf(problem.field);
    problems_.push_back(std::move(problem));
  }
}

std::optional<double> readNumber(const Json& value, const std::string& path, Problems& problems) {
  if (value.is_number()) return value.get<double>();
  expect(problems, path, value, "a number");
  return std::nullopt;
}

const Json::array_t* readArray(const Json* value, const std::string& path, Problems& problems) {
  if (value == nullptr) return nullptr;
  if (value->is_array()) return value->get_ptr<const Json::array_t*>();
  expect(problems, path, *value, "an array");
  return nullptr;
}

std::string elementPath(std::string_view path, std::size_t index) {
  return std::string(path) + '[' + std::to_string(index) + ']';
}

}  // namespace steadyturn
