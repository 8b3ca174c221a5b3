#include <algorithm>
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "ledger.h"

namespace steadyturn {

namespace {

bool isAscii(const std::string& key) {
  return std::ranges::all_of(key, [](char c) { return static_cast<unsigned char>(c) < 0x80; });
}

void demandPlain(const Facts& facts) {
  if (facts.is_number_float()) throw std::invalid_argument("a float in a ledger entry: decimals are written as text");
  if (facts.is_object()) {
    for (const auto& [key, value] : facts.items()) {
      // RFC 8785 sorts by UTF-16 units, std::map by bytes; they agree on ASCII.
      if (!isAscii(key)) throw std::invalid_argument("a key of a ledger entry that is not ASCII: " + key);
      demandPlain(value);
    }
  } else if (facts.is_array()) {
    for (const auto& value : facts) demandPlain(value);
  }
}

}  // namespace

std::string canonicalJson(const Facts& facts) {
  demandPlain(facts);
  return facts.dump();
}

}  // namespace steadyturn
