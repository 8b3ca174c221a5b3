#include "differences.h"

#include <algorithm>
#include <nlohmann/json.hpp>
#include <set>

namespace steadyturn {

namespace {

using Json = nlohmann::json;

struct Listing {
  static constexpr int shown = 3;
  std::string text;
  int count = 0;

  void add(const std::string& place, const std::string& found, const std::string& told) {
    if (++count > shown) return;
    if (!text.empty()) text += "; ";
    text += place + " is " + found + ", the entry says " + told;
  }
};

std::string spell(const Json* value) {
  if (value == nullptr) return "not there";
  if (value->is_null()) return "empty";
  auto text = value->dump(-1, ' ', false, Json::error_handler_t::replace);
  constexpr std::size_t most = 80;
  if (text.size() <= most) return text;
  auto end = most;
  while ((static_cast<unsigned char>(text[end]) & 0xC0) == 0x80) --end;  // not inside a character
  return text.substr(0, end) + "…";
}

void compare(Listing& listing, const std::string& place, const Json* found, const Json* told) {
  if (found != nullptr && told != nullptr && *found == *told) return;
  if (found != nullptr && told != nullptr && found->is_object() && told->is_object()) {
    std::set<std::string> keys;
    for (const auto* side : {found, told}) {
      for (const auto& item : side->items()) keys.insert(item.key());
    }
    const auto at = [](const Json& side, const std::string& key) {
      const auto item = side.find(key);
      return item == side.end() ? nullptr : &*item;
    };
    for (const auto& key : keys)
      compare(listing, place.empty() ? key : std::string(place).append(1, '.').append(key), at(*found, key),
              at(*told, key));
  } else if (found != nullptr && told != nullptr && found->is_array() && told->is_array()) {
    for (std::size_t i = 0; i < std::max(found->size(), told->size()); ++i) {
      compare(listing, place + '[' + std::to_string(i) + ']', i < found->size() ? &(*found)[i] : nullptr,
              i < told->size() ? &(*told)[i] : nullptr);
    }
  } else {
    listing.add(place.empty() ? "the record" : place, spell(found), spell(told));
  }
}

}  // namespace

std::string differencesOf(const Json& record, const Json& entry) {
  Listing listing;
  compare(listing, {}, &record, &entry);
  if (listing.count > Listing::shown)
    listing.text += "; and " + std::to_string(listing.count - Listing::shown) + " more";
  return listing.text;
}

}  // namespace steadyturn
