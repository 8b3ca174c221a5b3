// Ed25519 signatures (RFC 8032) by libsodium. A private key is its 32-byte seed; its bytes are wiped from memory when
// it goes.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>

namespace steadyturn {

class Seed {
 public:
  using Bytes = std::array<unsigned char, 32>;
  static Seed random();
  explicit Seed(const Bytes& bytes) : bytes_(bytes) {}
  Seed(Seed&& other) noexcept;
  Seed& operator=(Seed&& other) noexcept;
  Seed(const Seed&) = delete;
  Seed& operator=(const Seed&) = delete;
  ~Seed();
  const Bytes& bytes() const { return bytes_; }

 private:
  void wipe() noexcept;
  Bytes bytes_;
};

// All in hexadecimal digits, lower case: 64 for a public key, 128 for a signature.
std::string publicKeyOf(const Seed& seed);
std::string signatureOf(const Seed& seed, std::string_view message);
// False for anything that is not a key or not a signature, too.
bool isSignedBy(std::string_view publicKey, std::string_view message, std::string_view signature);
// The first 16 digits of SHA-256 over the key's bytes; nothing for what is not 64 digits.
std::optional<std::string> keyIdOf(std::string_view publicKey);

}  // namespace steadyturn
