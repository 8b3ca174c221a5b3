#include "pin.h"

#include <sodium.h>

#include <array>
#include <cctype>
#include <new>
#include <string_view>

#include "shop_people.h"
#include "store_error.h"
#include "validate.h"

namespace steadyturn {

namespace {

constexpr std::string_view signs = "ABCDEFGHJKLMNPQRSTUVWXYZ23456789";  // 32: five bits each
constexpr std::size_t groups = 5;
constexpr std::size_t signsInGroup = 4;

}  // namespace

std::string hashOfPin(const std::string& pin) {
  std::array<char, crypto_pwhash_STRBYTES> hash{};
  if (sodium_init() < 0 || crypto_pwhash_str(hash.data(), pin.data(), pin.size(), crypto_pwhash_OPSLIMIT_INTERACTIVE,
                                             crypto_pwhash_MEMLIMIT_INTERACTIVE) != 0) {
    throw StoreError({.kind = ProblemKind::Unavailable,
                      .field = "PIN",
                      .accepted = "64 MiB of memory to keep it safely: close other programs and try again"});
  }
  return hash.data();
}

bool opens(const std::string& hash, const std::string& pin) {
  return sodium_init() >= 0 && crypto_pwhash_str_verify(hash.c_str(), pin.data(), pin.size()) == 0;
}

Problems problemsOfPin(const std::string& pin) {
  Problems problems;
  constexpr std::size_t shortest = 4;
  constexpr std::size_t longest = 200;
  if (pin.size() < shortest || pin.size() > longest) {
    problems.push_back({.field = "PIN",
                        .found = std::to_string(pin.size()) + " bytes",
                        .accepted = "a PIN or passphrase of 4 to 200 bytes"});
  }
  checkText(problems, "PIN", pin);
  return problems;
}

std::string freshRecoveryCode() {
  if (sodium_init() < 0) {
    throw StoreError({.kind = ProblemKind::Unavailable, .field = "recovery code", .accepted = "random numbers"});
  }
  std::string code;
  for (std::size_t i = 0; i < groups * signsInGroup; ++i) {
    if (i > 0 && i % signsInGroup == 0) code += '-';
    code += signs[randombytes_uniform(static_cast<std::uint32_t>(signs.size()))];
  }
  return code;
}

std::string freshPin() {
  if (sodium_init() < 0)
    throw StoreError({.kind = ProblemKind::Unavailable, .field = "PIN", .accepted = "random numbers"});
  std::string pin;
  for (int i = 0; i < 6; ++i) pin += static_cast<char>('0' + randombytes_uniform(10));
  return pin;
}

std::string readRecoveryCode(const std::string& typed) {
  std::string code;
  for (const char sign : typed) {
    const auto c = static_cast<unsigned char>(sign);
    if (std::isalnum(c) == 0) continue;
    if (!code.empty() && code.size() % (signsInGroup + 1) == signsInGroup) code += '-';
    code += static_cast<char>(std::toupper(c));
  }
  return code;
}

}  // namespace steadyturn
