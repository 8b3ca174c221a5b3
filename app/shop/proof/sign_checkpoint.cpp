#include "inside.h"
#include "shop_people.h"
#include "shop_proof.h"
#include "shop_signing.h"
#include "signed_statement.h"
#include "stored_text.h"
#include "tree_nodes.h"
#include "unlock.h"
#include "verifier.h"
#include "writing.h"

namespace steadyturn {

tl::unexpected<Problems> withoutKey() {
  return refuse({.kind = ProblemKind::NotFound,
                 .field = "key",
                 .accepted = "a shop with a signing key; make one first (`sturn key make`)"});
}

std::string normalisedPassphrase(std::string passphrase) {
  normalise(passphrase);
  return passphrase;
}

Result<Unlocked> unlock(const Shop& shop, const std::string& passphrase) {
  auto& signing = shop.inside().signing;
  auto keys = signing.keys();
  if (keys.empty()) return withoutKey();
  const auto seal = signing.sealOf(keys.back().id);
  if (!seal) {
    return refuse({.kind = ProblemKind::Unavailable,
                   .field = "key",
                   .found = keys.back().id,
                   .accepted = "a shop that still has this key's private half; replace the key as lost"});
  }
  auto seed = openSeal(*seal, normalisedPassphrase(passphrase));
  if (!seed) return tl::unexpected(seed.error());
  if (publicKeyOf(*seed) != keys.back().publicKey) {
    return refuse({.kind = ProblemKind::Unavailable,
                   .field = "key",
                   .found = keys.back().id,
                   .accepted = "a shop that is not damaged: the sealed key is another one; verify it"});
  }
  return Unlocked{.key = std::move(keys.back()), .seed = std::move(*seed)};
}

Result<Checkpoint> headToSign(const Shop& shop) {
  auto& database = shop.inside().database;
  const auto head = headOf(database);
  if (ledgerRoot(database, head.size) == head.root) return head;
  return refuse({.kind = ProblemKind::Unavailable,
                 .field = "shop",
                 .found = shop.address(),
                 .accepted = "a shop that is not damaged: verify it before anything is signed"});
}

Result<SignedHead> signCheckpoint(Shop& shop, const std::string& passphrase, const std::string& occasion) {
  if (auto allowed = may(shop, Act::SignLedger); !allowed) return tl::unexpected(allowed.error());
  return guarded([&]() -> Result<SignedHead> {
    const auto unlocked = unlock(shop, passphrase);
    if (!unlocked) return tl::unexpected(unlocked.error());
    auto& inside = shop.inside();
    Writing writing(inside, Act::SignLedger);
    if (const auto keys = inside.signing.keys(); keys.empty() || keys.back().id != unlocked->key.id) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "key",
                     .found = unlocked->key.id,
                     .accepted = "the key in force: somebody replaced it meanwhile; try again"});
    }
    const auto now = headToSign(shop);
    if (!now) return tl::unexpected(now.error());
    const auto stamp = writing.stamp();
    SignedHead head{.checkpoint = {.size = now->size,
                                   .root = writeHash(now->root),
                                   .at = stamp.at,
                                   .key = unlocked->key.id,
                                   .occasion = occasion,
                                   .signature = {}},
                    .entry = 0,
                    .key = unlocked->key,
                    .statement = {}};
    head.statement = statementOf(shop.id(), head.checkpoint);
    head.checkpoint.signature = signatureOf(unlocked->seed, head.statement);
    head.entry = inside.signing.add(head.checkpoint, stamp);
    writing.commit();
    return head;
  });
}

Result<CertificateData> signedCertificate(Shop& shop, std::int64_t check, const std::string& passphrase) {
  auto data = shop.certificate(check);  // before anything is signed for a check that is not there
  if (!data) return data;
  const auto head = signCheckpoint(shop, passphrase, "certificate " + data->number);
  if (!head) return tl::unexpected(head.error());
  const auto proof = proveCheck(shop, check, head->checkpoint.size);
  if (!proof) return tl::unexpected(proof.error());
  data->ledger = LedgerPlace{.sequence = proof->sequence,
                             .leaf = proof->leaf,
                             .size = proof->head.size,
                             .root = writeHash(proof->head.root),
                             .path = proof->path,
                             .signature = LedgerSignature{.shop = shop.id(),
                                                          .key = head->key.id,
                                                          .publicKey = head->key.publicKey,
                                                          .holder = head->key.holder,
                                                          .at = head->checkpoint.at,
                                                          .signature = head->checkpoint.signature}};
  return data;
}

}  // namespace steadyturn
