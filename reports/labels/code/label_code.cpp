#include "label_code.h"

#include <fmt/format.h>

#include <algorithm>
#include <optional>

#include "utf8.h"

namespace steadyturn {
namespace {

constexpr std::string_view prefix = "STURN:";
constexpr std::string_view toolKind = "T:";

char upper(char character) {
  return character >= 'a' && character <= 'z' ? static_cast<char>(character - 'a' + 'A') : character;
}

std::string upperOf(std::string_view text) {
  std::string result(text);
  std::ranges::transform(result, result.begin(), upper);
  return result;
}

// A keyboard-wedge scanner ends its line with a carriage return, a line feed or a tab, as it is set.
std::string_view trimmed(std::string_view text) {
  constexpr std::string_view blanks = " \t\r\n";
  const auto first = text.find_first_not_of(blanks);
  if (first == std::string_view::npos) return {};
  return text.substr(first, text.find_last_not_of(blanks) - first + 1);
}

bool standsForItself(char character) {
  return (character >= 'A' && character <= 'Z') || (character >= '0' && character <= '9') || character == '-' ||
         character == '.';
}

std::optional<unsigned> hexDigit(char character) {
  if (character >= '0' && character <= '9') return static_cast<unsigned>(character - '0');
  if (character >= 'A' && character <= 'F') return static_cast<unsigned>(character - 'A') + 10;
  return {};
}

// REQUIRES: upper case.
std::optional<std::string> decode(std::string_view encoded) {
  std::string id;
  for (std::size_t i = 0; i < encoded.size(); ++i) {
    if (standsForItself(encoded[i])) {
      id += encoded[i];
      continue;
    }
    if (encoded[i] != '%' || encoded.size() - i < 3) return {};
    const auto high = hexDigit(encoded[i + 1]), low = hexDigit(encoded[i + 2]);
    if (!high || !low) return {};
    id += static_cast<char>(*high * 16 + *low);
    i += 2;
  }
  if (id.empty() || !isUtf8(id)) return {};
  return id;
}

}  // namespace

std::string writeLabelCode(const LabelCode& code) {
  std::string text(prefix);
  text += toolKind;
  for (const char character : code.id) {
    if (standsForItself(character)) {
      text += character;
    } else {
      text += fmt::format("%{:02X}", static_cast<unsigned>(static_cast<unsigned char>(character)));
    }
  }
  return text;
}

bool looksLikeLabelCode(std::string_view typed) { return upperOf(trimmed(typed)).starts_with(prefix); }

Result<LabelCode> parseLabelCode(std::string_view typed) {
  const auto code = upperOf(trimmed(typed));
  const auto no = [&](std::string_view accepted) {
    return refuse({.field = "label", .found = std::string(typed), .accepted = std::string(accepted)});
  };
  if (!code.starts_with(prefix)) return no("the code of a tool's label, such as STURN:T:W06");
  const auto rest = std::string_view(code).substr(prefix.size());
  if (!rest.starts_with(toolKind)) return no("a tool's label (STURN:T:…); this one marks something else");
  auto id = decode(rest.substr(toolKind.size()));
  if (!id) return no("a whole code, such as STURN:T:W06; scan it again");
  return LabelCode{.kind = LabelKind::Tool, .id = std::move(*id)};
}

}  // namespace steadyturn
