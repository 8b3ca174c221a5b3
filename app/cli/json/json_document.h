// One JSON document as text (RFC 8259), read strictly and written so that every double reads back the same.
#pragma once

#include <nlohmann/json.hpp>
#include <string>
#include <string_view>

#include "problem.h"

namespace steadyturn {

using Json = nlohmann::json;
using OrderedJson = nlohmann::ordered_json;  // keeps fields in the order they were written

// Refuses, with line and column, what is not JSON; bytes that are not UTF-8; a name that stands twice in one object;
// numbers no double can hold; more than 64 levels. `source` names the text in the problem ("standard input").
Result<Json> parseDocument(std::string_view text, std::string_view source);

// Indented, with a line break at the end.
std::string writeDocument(const OrderedJson& document);

}  // namespace steadyturn
