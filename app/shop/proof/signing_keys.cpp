#include <algorithm>

#include "inside.h"
#include "shop_people.h"
#include "shop_signing.h"
#include "signed_statement.h"
#include "stored_text.h"
#include "unlock.h"
#include "validate.h"
#include "writing.h"

namespace steadyturn {

namespace {

constexpr std::size_t shortestPassphrase = 8, longestHolder = 200;

void checkLine(Problems& problems, const std::string& field, const std::string& text, const char* accepted) {
  const auto before = problems.size();
  checkText(problems, field, text);
  if (problems.size() != before) return;
  if (text.empty() || text.size() > longestHolder || text.find('\n') != std::string::npos)
    problems.push_back({.field = field, .found = text, .accepted = accepted});
}

void checkNewPassphrase(Problems& problems, const std::string& passphrase) {
  const auto characters = std::ranges::count_if(
      passphrase, [](char c) { return (static_cast<unsigned char>(c) & 0xC0) != 0x80; });  // UTF-8: where one begins
  if (static_cast<std::size_t>(characters) < shortestPassphrase)
    problems.push_back({.field = "passphrase", .accepted = "at least 8 characters; several words are best"});
}

Problems problemsOfKey(const std::string& holder, const std::string& passphrase) {
  Problems problems;
  checkLine(problems, "holder", holder, "one line: the name of the person who has the passphrase");
  checkNewPassphrase(problems, passphrase);
  return problems;
}

std::optional<SigningKey> inForce(Shop::Inside& inside) {
  auto keys = inside.signing.keys();
  return keys.empty() ? std::nullopt : std::optional(std::move(keys.back()));
}

// An old shop goes by its name: the id that signatures name is fixed with the first key.
void fixShopId(Shop& shop, const EntryStamp& stamp) {
  auto& facts = shop.inside().facts;
  if (!facts.setting("shop_id")) facts.set("shop_id", shop.id(), stamp);
}

struct Succession {
  std::optional<SigningKey> before;
  const Seed* beforeSeed = nullptr;  // signs as well
  std::string lostReason;
};

Result<SigningKey> enterKey(Shop& shop, std::string holder, const std::string& passphrase, const SealCost& cost,
                            const Succession& succession) {
  auto& inside = shop.inside();
  const auto seed = Seed::random();
  const auto seal = sealSeed(seed, normalisedPassphrase(passphrase), cost);  // before others have to wait
  if (!seal) return tl::unexpected(seal.error());
  normalise(holder);
  Writing writing(inside, Act::ChangeKeys);
  const auto stamp = writing.stamp();
  const auto now = inForce(inside);
  if (now.has_value() != succession.before.has_value() || (now && now->id != succession.before->id)) {
    return refuse(
        {.kind = ProblemKind::Conflict,
         .field = "key",
         .found = now ? now->id : std::string(),
         .accepted = "the shop as it was a moment ago: somebody entered a key meanwhile; look and try again"});
  }
  fixShopId(shop, stamp);
  const auto head = headToSign(shop);
  if (!head) return tl::unexpected(head.error());
  SigningKey key{.id = {},
                 .publicKey = publicKeyOf(seed),
                 .holder = std::move(holder),
                 .made = stamp.at,
                 .replaces = succession.before ? succession.before->id : std::string(),
                 .lostReason = succession.lostReason,
                 .size = head->size,
                 .root = writeHash(head->root),
                 .signature = {},
                 .oldSignature = {}};
  key.id = *keyIdOf(key.publicKey);
  const auto statement = statementOf(shop.id(), key);
  key.signature = signatureOf(seed, statement);
  if (succession.beforeSeed != nullptr) key.oldSignature = signatureOf(*succession.beforeSeed, statement);
  inside.signing.addKey(key, *seal, stamp);
  writing.commit();
  return key;
}

}  // namespace

Result<std::vector<SigningKey>> signingKeys(const Shop& shop) {
  return guarded([&]() -> Result<std::vector<SigningKey>> { return shop.inside().signing.keys(); });
}

Result<bool> hasSigningKey(const Shop& shop) {
  return guarded([&]() -> Result<bool> { return inForce(shop.inside()).has_value(); });
}

Result<SigningKey> makeSigningKey(Shop& shop, const std::string& holder, const std::string& passphrase,
                                  const SealCost& cost) {
  if (auto allowed = may(shop, Act::ChangeKeys); !allowed) return tl::unexpected(allowed.error());
  if (auto problems = problemsOfKey(holder, passphrase); !problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<SigningKey> {
    if (const auto key = inForce(shop.inside())) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "key",
                     .found = key->id,
                     .accepted = "a shop without a signing key; this one's is replaced"});
    }
    return enterKey(shop, holder, passphrase, cost, {});
  });
}

Result<SigningKey> replaceSigningKey(Shop& shop, const std::string& holder, const std::string& oldPassphrase,
                                     const std::string& passphrase, const SealCost& cost) {
  if (auto allowed = may(shop, Act::ChangeKeys); !allowed) return tl::unexpected(allowed.error());
  if (auto problems = problemsOfKey(holder, passphrase); !problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<SigningKey> {
    const auto unlocked = unlock(shop, oldPassphrase);
    if (!unlocked) return tl::unexpected(unlocked.error());
    return enterKey(shop, holder, passphrase, cost,
                    {.before = unlocked->key, .beforeSeed = &unlocked->seed, .lostReason = {}});
  });
}

Result<SigningKey> replaceLostKey(Shop& shop, const std::string& holder, const std::string& reason,
                                  const std::string& passphrase, const SealCost& cost) {
  if (auto allowed = may(shop, Act::ChangeKeys); !allowed) return tl::unexpected(allowed.error());
  auto problems = problemsOfKey(holder, passphrase);
  checkLine(problems, "lost", reason, "one line: why the key in force can't sign any more");
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<SigningKey> {
    auto before = inForce(shop.inside());
    if (!before) return withoutKey();
    auto said = reason;
    normalise(said);
    return enterKey(shop, holder, passphrase, cost,
                    {.before = std::move(before), .beforeSeed = nullptr, .lostReason = std::move(said)});
  });
}

Result<void> changePassphrase(Shop& shop, const std::string& oldPassphrase, const std::string& passphrase,
                              const SealCost& cost) {
  if (auto allowed = may(shop, Act::ChangeKeys); !allowed) return tl::unexpected(allowed.error());
  Problems problems;
  checkNewPassphrase(problems, passphrase);
  if (!problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<void> {
    const auto unlocked = unlock(shop, oldPassphrase);
    if (!unlocked) return tl::unexpected(unlocked.error());
    const auto seal = sealSeed(unlocked->seed, normalisedPassphrase(passphrase), cost);
    if (!seal) return tl::unexpected(seal.error());
    auto& inside = shop.inside();
    Writing writing(inside, Act::ChangeKeys);
    if (const auto now = inForce(inside); !now || now->id != unlocked->key.id) return withoutKey();
    inside.signing.replaceSeal(unlocked->key.id, *seal);
    writing.commit();
    return {};
  });
}

}  // namespace steadyturn
