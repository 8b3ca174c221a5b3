#include "json_document.h"

#include <algorithm>
#include <set>
#include <utility>
#include <vector>

#include "utf8.h"

namespace steadyturn {
namespace {

constexpr std::size_t deepestLevel = 64;
constexpr std::string_view whatIsJson = "JSON: an object such as {\"name\": 1.5}";

// "standard input, line 3, column 14" for a byte offset.
std::string placeOf(std::string_view text, std::size_t offset, std::string_view source) {
  const std::string_view before = text.substr(0, std::min(offset, text.size()));
  const auto line = 1 + std::ranges::count(before, '\n');
  const std::size_t lastBreak = before.rfind('\n');
  const std::size_t column = 1 + before.size() - (lastBreak == std::string_view::npos ? 0 : lastBreak + 1);
  return std::string(source) + ", line " + std::to_string(line) + ", column " + std::to_string(column);
}

// The word (or sign) of the text that the byte at `at` belongs to; empty beyond the end.
std::string_view wordAt(std::string_view text, std::size_t at) {
  if (at >= text.size()) return {};
  const auto partOfWord = [&](std::size_t i) {
    const char c = text[i];
    const bool letter = (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || static_cast<unsigned char>(c) >= 0x80;
    return letter || (c >= '0' && c <= '9') || c == '_' || c == '.' || c == '+' || c == '-';
  };
  std::size_t first = at;
  std::size_t end = at + 1;
  if (partOfWord(at)) {
    while (first > 0 && partOfWord(first - 1)) --first;
    while (end < text.size() && partOfWord(end)) ++end;
  }
  return text.substr(first, end - first);
}

// The parser's own account reads "…: syntax error while parsing value - invalid literal; last read: 'x'; expected …".
std::string expectedBy(std::string_view account) {
  constexpr std::string_view mark = "; expected ";
  const std::size_t at = account.rfind(mark);
  if (at == std::string_view::npos) return std::string(whatIsJson);
  return "JSON; expected here: " + std::string(account.substr(at + mark.size()));
}

// Builds the document from the parser's events; every refusal leaves the first problem in `problem`.
class Builder : public nlohmann::json_sax<Json> {
 public:
  Builder(std::string_view text, std::string_view source) : text_(text), source_(source) {}

  bool null() override { return put(nullptr); }
  bool boolean(bool value) override { return put(value); }
  bool number_integer(number_integer_t value) override { return put(value); }
  bool number_unsigned(number_unsigned_t value) override { return put(value); }
  bool number_float(number_float_t value, const string_t&) override { return put(value); }
  bool string(string_t& value) override { return put(std::move(value)); }
  bool binary(binary_t&) override { return false; }
  bool start_object(std::size_t) override { return open(Json::object()); }
  bool start_array(std::size_t) override { return open(Json::array()); }
  bool end_object() override { return close(); }
  bool end_array() override { return close(); }

  bool key(string_t& name) override {
    if (!open_.back()->contains(name)) {
      key_ = std::move(name);
      return true;
    }
    problem = {.field = std::string(source_), .found = name, .accepted = "each name once in an object"};
    return false;
  }

  bool parse_error(std::size_t position, const std::string&, const nlohmann::detail::exception& error) override {
    const std::string_view found = wordAt(text_, position - 1);
    const std::size_t start = found.empty() ? text_.size() : static_cast<std::size_t>(found.data() - text_.data());
    constexpr int numberOverflow = 406;
    problem = {.field = placeOf(text_, start, source_),
               .found = found.empty() ? "the end of the text" : std::string(found),
               .accepted = error.id == numberOverflow ? "a number that a double can hold" : expectedBy(error.what())};
    return false;
  }

  Json document;
  Problem problem;

 private:
  template <typename Value>
  bool put(Value&& value) {
    place(std::forward<Value>(value));
    return true;
  }

  template <typename Value>
  Json* place(Value&& value) {
    if (open_.empty()) return &(document = std::forward<Value>(value));
    if (open_.back()->is_array()) return &open_.back()->emplace_back(std::forward<Value>(value));
    return &((*open_.back())[key_] = std::forward<Value>(value));
  }

  bool open(Json container) {
    if (open_.size() < deepestLevel) {
      open_.push_back(place(std::move(container)));
      return true;
    }
    problem = {.field = std::string(source_),
               .found = "more than " + std::to_string(deepestLevel) + " levels of brackets",
               .accepted = std::string(whatIsJson)};
    return false;
  }

  bool close() {
    open_.pop_back();
    return true;
  }

  std::string_view text_, source_;
  std::vector<Json*> open_;
  std::string key_;
};

}  // namespace

Result<Json> parseDocument(std::string_view text, std::string_view source) {
  const bool empty = std::ranges::all_of(text, [](char c) { return c == ' ' || (c >= '\t' && c <= '\r'); });
  if (empty) return refuse({.field = std::string(source), .accepted = std::string(whatIsJson)});
  if (const auto bad = firstBadByte(text)) {
    return refuse({.field = placeOf(text, *bad, source),
                   .found = std::string(text.substr(*bad, 1)),
                   .accepted = "text in UTF-8"});
  }
  Builder builder(text, source);
  if (!Json::sax_parse(text, &builder)) return refuse(std::move(builder.problem));
  return std::move(builder.document);
}

std::string writeDocument(const OrderedJson& document) { return document.dump(2) + '\n'; }

}  // namespace steadyturn
