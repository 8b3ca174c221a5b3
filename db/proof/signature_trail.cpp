#include "signature_trail.h"

#include <algorithm>
#include <nlohmann/json.hpp>

#include "ed25519.h"
#include "signed_statement.h"
#include "signing_facts.h"

namespace steadyturn {

namespace {

std::string nameOf(const SigningKey& key) { return "signing key " + key.id; }

}  // namespace

void SignatureTrail::told(std::int64_t entry, std::string_view kind, std::string_view facts,
                          const GrowingTree& before) {
  const bool isKey = kind == "signing_key", isCheckpoint = kind == "checkpoint", isSetting = kind == "setting";
  if (!isKey && !isCheckpoint && !isSetting) return;
  const auto read = Facts::parse(facts, nullptr, false);
  if (!read.is_object()) return;  // said already where the entry was read
  if (isKey) addKey(entry, signingKeyOf(read), before);
  if (isCheckpoint) addCheckpoint(entry, signedCheckpointOf(read), before);
  if (isSetting && read.value("name", Facts()) == "shop_id") {
    if (const auto value = read.find("value"); value != read.end() && value->is_string()) shop_ = *value;
  }
}

void SignatureTrail::compareTree(const Statement& statement, const GrowingTree& before) {
  const auto wanted = static_cast<std::uint64_t>(statement.entry - 1);
  if (statement.size != wanted) {
    report_(statement.entry, statement.name + " counts " + std::to_string(statement.size) +
                                 " entries, but stands after " + std::to_string(wanted));
  } else if (const auto root = writeHash(before.root()); root != statement.root) {
    report_(statement.entry, statement.name + ": what it signed, entries 1 to " + std::to_string(statement.size) +
                                 ", had another root; since then something among entries " +
                                 std::to_string(lastGood_ + 1) + " to " + std::to_string(statement.size) +
                                 " was changed, removed or written anew");
  } else {
    lastGood_ = statement.size;
  }
}

// Its own signature proves that whoever entered the key had it; that of the one before hands the trust on.
void SignatureTrail::addKey(std::int64_t entry, SigningKey key, const GrowingTree& before) {
  compareTree({.entry = entry, .name = nameOf(key), .size = key.size, .root = key.root}, before);
  if (keyIdOf(key.publicKey) != key.id) report_(entry, nameOf(key) + " has not the id that its public key gives");
  const auto statement = statementOf(shop_, key);
  if (isSignedBy(key.publicKey, statement, key.signature)) {
    ++signatures_;
  } else {
    report_(entry, nameOf(key) + " has not signed the statement that makes it one");
  }
  compareKeyBefore(entry, key);
  covered(key.size, key.made, key);
  keys_.push_back(std::move(key));
}

void SignatureTrail::compareKeyBefore(std::int64_t entry, const SigningKey& key) {
  const auto inForce = keys_.empty() ? std::string() : keys_.back().id;
  if (key.replaces != inForce) {
    report_(entry, nameOf(key) + " says that it replaces " + (key.replaces.empty() ? "none" : key.replaces) +
                       ", but " + (inForce.empty() ? "no key" : "key " + inForce) + " was in force");
  } else if (!keys_.empty() && key.lostReason.empty()) {
    if (isSignedBy(keys_.back().publicKey, statementOf(shop_, key), key.oldSignature)) {
      ++signatures_;
    } else {
      report_(entry, nameOf(key) + " took the place of key " + inForce + " without that key's signature");
    }
  }
}

void SignatureTrail::addCheckpoint(std::int64_t entry, const SignedCheckpoint& checkpoint,
                                   const GrowingTree& before) {
  const auto name = "signed checkpoint " + std::to_string(entry);
  compareTree({.entry = entry, .name = name, .size = checkpoint.size, .root = checkpoint.root}, before);
  const auto key = std::ranges::find(keys_, checkpoint.key, &SigningKey::id);
  if (key == keys_.end()) {
    report_(entry, name + " names key " + checkpoint.key + ", which the ledger does not know");
  } else if (!isSignedBy(key->publicKey, statementOf(shop_, checkpoint), checkpoint.signature)) {
    report_(entry, name + " is not signed by key " + checkpoint.key + ", which it names");
  } else if (&*key != &keys_.back()) {
    report_(entry,
            name + " was signed by key " + checkpoint.key + " after key " + keys_.back().id + " had taken its place");
  } else {
    ++signatures_;
    covered(checkpoint.size, checkpoint.at, *key);
  }
}

void SignatureTrail::covered(std::uint64_t size, const std::string& at, const SigningKey& by) {
  last_ = {.size = size, .at = at, .key = by.id, .publicKey = by.publicKey, .holder = by.holder};
}

void SignatureTrail::finish(const std::string& trusted, Verification& into) const {
  into.signatures = signatures_;
  into.lastSigned = last_;
  const auto from = std::ranges::find(keys_, trusted, &SigningKey::publicKey);
  if (!trusted.empty() && from == keys_.end()) {
    report_(0, "the ledger does not know key " + trusted +
                   ": it was written anew under another key or none, or belongs to another shop");
  }
  for (auto key = keys_.begin(); key != keys_.end(); ++key) {
    if (key->lostReason.empty()) continue;
    const auto said = nameOf(*key) + " took the place of key " + key->replaces +
                      " without that key's signature, because: " + key->lostReason;
    into.notes.push_back(said);
    if (!trusted.empty() && key > from) report_(0, said + "; what is trusted does not vouch for it");
  }
}

}  // namespace steadyturn
