#include "signed_statement.h"

#include <algorithm>

namespace steadyturn {

namespace {

// A value stays on its own line, whatever an old shop's name holds.
std::string line(const char* name, std::string value) {
  std::ranges::replace(value, '\n', ' ');
  return name + (": " + value) + '\n';
}

std::string orNothing(const std::string& text) { return text.empty() ? "nothing" : text; }

}  // namespace

std::string statementOf(const std::string& shop, const SignedCheckpoint& checkpoint) {
  return "steadyturn checkpoint v1\n" + line("shop", shop) + line("key", checkpoint.key) +
         line("size", std::to_string(checkpoint.size)) + line("root", checkpoint.root) + line("time", checkpoint.at);
}

std::string statementOf(const std::string& shop, const SigningKey& key) {
  return "steadyturn key v1\n" + line("shop", shop) + line("key", key.id) + line("public", key.publicKey) +
         line("holder", key.holder) + line("replaces", orNothing(key.replaces)) +
         line("lost", orNothing(key.lostReason)) + line("size", std::to_string(key.size)) + line("root", key.root) +
         line("time", key.made);
}

}  // namespace steadyturn
