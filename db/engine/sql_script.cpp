#include "sql_script.h"

#include <algorithm>
#include <cctype>
#include <string>

namespace steadyturn {

namespace {

bool isWordByte(char c) {
  const auto byte = static_cast<unsigned char>(c);
  return std::isalnum(byte) != 0 || c == '_' || c == '$' || byte >= 0x80;
}

// One step through the script: a comment, a quoted piece, a word or a single byte.
struct Token {
  enum class Kind { Blank, Comment, Quoted, Word, Other } kind;
  std::string_view text;
};

std::size_t endAfter(std::string_view script, std::size_t from, std::string_view mark) {
  const auto at = script.find(mark, from);
  return at == std::string_view::npos ? script.size() : at + mark.size();
}

Token tokenAt(std::string_view script, std::size_t at) {
  const auto rest = script.substr(at);
  const auto piece = [&](Token::Kind kind, std::size_t end) { return Token{kind, script.substr(at, end - at)}; };
  if (rest.starts_with("--")) return piece(Token::Kind::Comment, endAfter(script, at, "\n"));
  if (rest.starts_with("/*")) return piece(Token::Kind::Comment, endAfter(script, at + 2, "*/"));
  const char c = rest.front();
  if (const auto close = c == '$' ? rest.find('$', 1) : std::string_view::npos; close != std::string_view::npos) {
    // PostgreSQL's dollar quotes: $$ … $$ or $name$ … $name$.
    const auto mark = rest.substr(0, close + 1);
    if (std::all_of(mark.begin() + 1, mark.end() - 1, isWordByte)) {
      return piece(Token::Kind::Quoted, endAfter(script, at + mark.size(), mark));
    }
  }
  // A doubled quote inside reads as two quoted pieces side by side, which comes to the same.
  if (c == '\'' || c == '"' || c == '`') return piece(Token::Kind::Quoted, endAfter(script, at + 1, {&c, 1}));
  if (c == '[') return piece(Token::Kind::Quoted, endAfter(script, at, "]"));
  if (isWordByte(c)) {
    const auto* end = std::ranges::find_if_not(rest, isWordByte);
    return piece(Token::Kind::Word, at + static_cast<std::size_t>(end - rest.begin()));
  }
  const bool blank = std::isspace(static_cast<unsigned char>(c)) != 0;
  return piece(blank ? Token::Kind::Blank : Token::Kind::Other, at + 1);
}

// Knows, word by word, whether a ';' would end the statement.
class Nesting {
 public:
  void word(std::string_view word) {
    std::string upper(word);
    std::ranges::transform(upper, upper.begin(), [](unsigned char c) { return static_cast<char>(std::toupper(c)); });
    ++words_;
    if (words_ == 1) creates_ = upper == "CREATE";
    if (creates_ && words_ <= 3 && upper == "TRIGGER") trigger_ = true;
    if (!trigger_) return;
    if (upper == "BEGIN" || upper == "CASE") ++depth_;
    if (upper == "END") --depth_;
  }
  bool open() const { return depth_ > 0; }

 private:
  int words_ = 0;
  int depth_ = 0;
  bool creates_ = false;
  bool trigger_ = false;
};

}  // namespace

std::vector<std::string_view> splitStatements(std::string_view script) {
  std::vector<std::string_view> statements;
  std::size_t start = 0;
  bool content = false;
  Nesting nesting;
  const auto finish = [&](std::size_t end) {
    if (content) statements.push_back(script.substr(start, end - start));
    content = false;
    nesting = {};
  };
  for (std::size_t at = 0; at < script.size();) {
    const Token token = tokenAt(script, at);
    const auto next = at + token.text.size();
    if (token.text == ";" && !nesting.open()) {
      finish(at);
      start = next;
    } else {
      if (token.kind == Token::Kind::Word) nesting.word(token.text);
      content = content || (token.kind != Token::Kind::Blank && token.kind != Token::Kind::Comment);
    }
    at = next;
  }
  finish(script.size());
  return statements;
}

}  // namespace steadyturn
