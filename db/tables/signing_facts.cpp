#include "signing_facts.h"

#include <nlohmann/json.hpp>

namespace steadyturn {

namespace {

std::string textFact(const Facts& facts, const char* name) {
  const auto fact = facts.find(name);
  return fact != facts.end() && fact->is_string() ? fact->get<std::string>() : std::string();
}

std::uint64_t countFact(const Facts& facts, const char* name) {
  const auto fact = facts.find(name);
  return fact != facts.end() && fact->is_number_unsigned() ? fact->get<std::uint64_t>() : 0;
}

}  // namespace

Facts signingFacts(const SigningKey& key) {
  return {{"id", key.id},
          {"public_key", key.publicKey},
          {"holder", key.holder},
          {"made_at", key.made},
          {"replaces", key.replaces},
          {"lost_reason", key.lostReason},
          {"size", key.size},
          {"root", key.root},
          {"signature", key.signature},
          {"old_signature", key.oldSignature}};
}

Facts signingFacts(const SignedCheckpoint& checkpoint) {
  return {{"size", checkpoint.size}, {"root", checkpoint.root},         {"at", checkpoint.at},
          {"key", checkpoint.key},   {"occasion", checkpoint.occasion}, {"signature", checkpoint.signature}};
}

SigningKey signingKeyOf(const Facts& facts) {
  return {.id = textFact(facts, "id"),
          .publicKey = textFact(facts, "public_key"),
          .holder = textFact(facts, "holder"),
          .made = textFact(facts, "made_at"),
          .replaces = textFact(facts, "replaces"),
          .lostReason = textFact(facts, "lost_reason"),
          .size = countFact(facts, "size"),
          .root = textFact(facts, "root"),
          .signature = textFact(facts, "signature"),
          .oldSignature = textFact(facts, "old_signature")};
}

SignedCheckpoint signedCheckpointOf(const Facts& facts) {
  return {.size = countFact(facts, "size"),
          .root = textFact(facts, "root"),
          .at = textFact(facts, "at"),
          .key = textFact(facts, "key"),
          .occasion = textFact(facts, "occasion"),
          .signature = textFact(facts, "signature")};
}

}  // namespace steadyturn
