#include "ed25519.h"

#include <sodium.h>

#include <algorithm>
#include <stdexcept>

#include "merkle.h"

namespace steadyturn {

namespace {

template <std::size_t Size>
std::string hexDigits(const std::array<unsigned char, Size>& bytes) {
  std::array<char, 2 * Size + 1> digits{};
  sodium_bin2hex(digits.data(), digits.size(), bytes.data(), bytes.size());
  return digits.data();
}

template <std::size_t Size>
std::optional<std::array<unsigned char, Size>> bytesOfHex(std::string_view digits) {
  std::array<unsigned char, Size> bytes{};
  std::size_t read = 0;
  const bool good = digits.size() == 2 * Size &&
                    sodium_hex2bin(bytes.data(), Size, digits.data(), digits.size(), nullptr, &read, nullptr) == 0;
  return good && read == Size ? std::optional(bytes) : std::nullopt;
}

// A secret key as libsodium has it, seed and public key one after the other; gone with the scope.
struct KeyPair {
  explicit KeyPair(const Seed& seed) {
    crypto_sign_seed_keypair(publicKey.data(), secret.data(), seed.bytes().data());
  }
  ~KeyPair() { sodium_memzero(secret.data(), secret.size()); }
  KeyPair(const KeyPair&) = delete;
  KeyPair& operator=(const KeyPair&) = delete;

  std::array<unsigned char, crypto_sign_PUBLICKEYBYTES> publicKey{};
  std::array<unsigned char, crypto_sign_SECRETKEYBYTES> secret{};
};

const unsigned char* octets(std::string_view text) { return reinterpret_cast<const unsigned char*>(text.data()); }

}  // namespace

Seed Seed::random() {
  if (sodium_init() < 0) throw std::runtime_error("the system gives no random numbers");
  Seed seed(Bytes{});
  randombytes_buf(seed.bytes_.data(), seed.bytes_.size());
  return seed;
}

Seed::Seed(Seed&& other) noexcept : bytes_(other.bytes_) { other.wipe(); }

Seed& Seed::operator=(Seed&& other) noexcept {
  if (this != &other) {
    bytes_ = other.bytes_;
    other.wipe();
  }
  return *this;
}

Seed::~Seed() { wipe(); }

void Seed::wipe() noexcept { sodium_memzero(bytes_.data(), bytes_.size()); }

std::string publicKeyOf(const Seed& seed) { return hexDigits(KeyPair(seed).publicKey); }

std::string signatureOf(const Seed& seed, std::string_view message) {
  const KeyPair keys(seed);
  std::array<unsigned char, crypto_sign_BYTES> signature{};
  crypto_sign_detached(signature.data(), nullptr, octets(message), message.size(), keys.secret.data());
  return hexDigits(signature);
}

bool isSignedBy(std::string_view publicKey, std::string_view message, std::string_view signature) {
  const auto key = bytesOfHex<crypto_sign_PUBLICKEYBYTES>(publicKey);
  const auto bytes = bytesOfHex<crypto_sign_BYTES>(signature);
  return key && bytes &&
         crypto_sign_verify_detached(bytes->data(), octets(message), message.size(), key->data()) == 0;
}

std::optional<std::string> keyIdOf(std::string_view publicKey) {
  const auto key = bytesOfHex<crypto_sign_PUBLICKEYBYTES>(publicKey);
  if (!key) return std::nullopt;
  constexpr std::size_t shown = 16;
  return writeHash(sha256({reinterpret_cast<const char*>(key->data()), key->size()})).substr(0, shown);
}

}  // namespace steadyturn
