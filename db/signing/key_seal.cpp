#include "key_seal.h"

#include <sodium.h>

#include <array>
#include <utility>

namespace steadyturn {

namespace {

// Nothing of ours asks for more: a seal that does was changed, and would only keep the machine busy.
constexpr std::uint64_t mostPasses = 16;
constexpr std::uint64_t mostMemory = std::uint64_t{2} << 30;

class BoxKey {
 public:
  BoxKey() = default;
  ~BoxKey() { sodium_memzero(bytes_.data(), bytes_.size()); }
  BoxKey(const BoxKey&) = delete;
  BoxKey& operator=(const BoxKey&) = delete;
  bool derive(const KeySeal& seal, std::string_view passphrase) {
    return seal.salt.size() == crypto_pwhash_SALTBYTES && seal.cost.passes <= mostPasses &&
           seal.cost.memory <= mostMemory &&
           crypto_pwhash(bytes_.data(), bytes_.size(), passphrase.data(), passphrase.size(),
                         reinterpret_cast<const unsigned char*>(seal.salt.data()), seal.cost.passes,
                         static_cast<std::size_t>(seal.cost.memory), crypto_pwhash_ALG_ARGON2ID13) == 0;
  }
  const unsigned char* data() const { return bytes_.data(); }

 private:
  std::array<unsigned char, crypto_secretbox_KEYBYTES> bytes_{};
};

unsigned char* octets(std::string& text) { return reinterpret_cast<unsigned char*>(text.data()); }
const unsigned char* octets(const std::string& text) { return reinterpret_cast<const unsigned char*>(text.data()); }

std::string randomBytes(std::size_t count) {
  std::string bytes(count, '\0');
  randombytes_buf(bytes.data(), bytes.size());
  return bytes;
}

auto noMemory() {
  return refuse({.kind = ProblemKind::Unavailable,
                 .field = "passphrase",
                 .accepted = "a machine with enough free memory to open the key's seal"});
}

}  // namespace

Result<KeySeal> sealSeed(const Seed& seed, std::string_view passphrase, const SealCost& cost) {
  if (sodium_init() < 0) return noMemory();
  KeySeal seal{.salt = randomBytes(crypto_pwhash_SALTBYTES),
               .cost = cost,
               .nonce = randomBytes(crypto_secretbox_NONCEBYTES),
               .box = std::string(crypto_secretbox_MACBYTES + seed.bytes().size(), '\0')};
  BoxKey key;
  if (!key.derive(seal, passphrase)) return noMemory();
  crypto_secretbox_easy(octets(seal.box), seed.bytes().data(), seed.bytes().size(), octets(std::as_const(seal.nonce)),
                        key.data());
  return seal;
}

Result<Seed> openSeal(const KeySeal& seal, std::string_view passphrase) {
  if (sodium_init() < 0) return noMemory();
  BoxKey key;
  if (!key.derive(seal, passphrase)) return noMemory();
  Seed::Bytes bytes{};
  const bool fits =
      seal.nonce.size() == crypto_secretbox_NONCEBYTES && seal.box.size() == crypto_secretbox_MACBYTES + bytes.size();
  if (!fits || crypto_secretbox_open_easy(bytes.data(), octets(seal.box), seal.box.size(), octets(seal.nonce),
                                          key.data()) != 0) {
    return refuse({.kind = ProblemKind::NotPermitted,
                   .field = "passphrase",
                   .accepted = "the passphrase of the shop's signing key; this one does not open it"});
  }
  Seed seed(bytes);
  sodium_memzero(bytes.data(), bytes.size());
  return seed;
}

}  // namespace steadyturn
