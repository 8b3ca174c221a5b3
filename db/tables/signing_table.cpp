#include "signing_table.h"

#include <nlohmann/json.hpp>

#include "signing_facts.h"

namespace steadyturn {

namespace {

constexpr const char* keyColumns =
    "SELECT id, public_key, holder, made_at, replaces, lost_reason, size, root, signature, old_signature, entry FROM "
    "signing_key ORDER BY entry";

SigningKey rowKey(const Statement& row) {
  return {.id = row.text(0),
          .publicKey = row.text(1),
          .holder = row.text(2),
          .made = row.text(3),
          .replaces = row.text(4),
          .lostReason = row.text(5),
          .size = static_cast<std::uint64_t>(row.integer(6)),
          .root = row.text(7),
          .signature = row.text(8),
          .oldSignature = row.text(9)};
}

QByteArray blobOf(const std::string& bytes) { return QByteArray::fromStdString(bytes); }

std::int64_t integerOf(std::uint64_t number) { return static_cast<std::int64_t>(number); }

}  // namespace

void SigningTable::addKey(const SigningKey& key, const KeySeal& seal, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "signing_key", signingFacts(key));
  Statement(database_,
            "INSERT INTO signing_key (entry, id, public_key, holder, made_at, replaces, lost_reason, size, root, "
            "signature, old_signature) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
      .run(entry, key.id, key.publicKey, key.holder, key.made, key.replaces, key.lostReason, integerOf(key.size),
           key.root, key.signature, key.oldSignature);
  Statement(database_, "DELETE FROM key_seal").run();
  replaceSeal(key.id, seal);
}

std::vector<SigningKey> SigningTable::keys() const {
  Statement rows(database_, keyColumns);
  std::vector<SigningKey> keys;
  rows.run();
  while (rows.next()) keys.push_back(rowKey(rows));
  return keys;
}

std::optional<KeySeal> SigningTable::sealOf(const std::string& key) const {
  Statement row(database_, "SELECT salt, passes, memory, nonce, box FROM key_seal WHERE key = ?");
  if (!row.run(key).next()) return std::nullopt;
  return KeySeal{.salt = row.bytes(0).toStdString(),
                 .cost = {.passes = static_cast<std::uint64_t>(row.integer(1)),
                          .memory = static_cast<std::uint64_t>(row.integer(2))},
                 .nonce = row.bytes(3).toStdString(),
                 .box = row.bytes(4).toStdString()};
}

void SigningTable::replaceSeal(const std::string& key, const KeySeal& seal) {
  Statement(database_,
            "INSERT INTO key_seal (key, salt, passes, memory, nonce, box) VALUES (?, ?, ?, ?, ?, ?) "
            "ON CONFLICT (key) DO UPDATE SET salt = excluded.salt, passes = excluded.passes, memory = "
            "excluded.memory, nonce = excluded.nonce, box = excluded.box")
      .run(key, blobOf(seal.salt), integerOf(seal.cost.passes), integerOf(seal.cost.memory), blobOf(seal.nonce),
           blobOf(seal.box));
}

std::int64_t SigningTable::add(const SignedCheckpoint& checkpoint, const EntryStamp& stamp) {
  const auto entry = ledger_.append(stamp, "checkpoint", signingFacts(checkpoint));
  Statement(database_,
            "INSERT INTO signed_checkpoint (entry, size, root, at, key, occasion, signature) VALUES (?, ?, ?, ?, ?, "
            "?, ?)")
      .run(entry, integerOf(checkpoint.size), checkpoint.root, checkpoint.at, checkpoint.key, checkpoint.occasion,
           checkpoint.signature);
  return entry;
}

ProvenRows SigningTable::provenKeys() const {
  const RecordKind kind{.kind = "signing_key", .name = {{"signing key", "id", 0}}};
  return {database_, kind, keyColumns, 10,
          [](const Statement& row) { return ProvenFacts{.facts = signingFacts(rowKey(row))}; }};
}

ProvenRows SigningTable::provenCheckpoints() const {
  const RecordKind kind{.kind = "checkpoint", .name = {{"signed checkpoint of", "size", 0}}};
  return {
      database_, kind, "SELECT size, root, at, key, occasion, signature, entry FROM signed_checkpoint ORDER BY entry",
      6, [](const Statement& row) {
        return ProvenFacts{.facts = signingFacts(SignedCheckpoint{.size = static_cast<std::uint64_t>(row.integer(0)),
                                                                  .root = row.text(1),
                                                                  .at = row.text(2),
                                                                  .key = row.text(3),
                                                                  .occasion = row.text(4),
                                                                  .signature = row.text(5)})};
      }};
}

}  // namespace steadyturn
