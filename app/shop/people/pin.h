// PINs and recovery codes: what they look like, and how they are kept.
#pragma once

#include <string>

#include "problem.h"

namespace steadyturn {

// Argon2id with a fresh salt in its own textual form (libsodium crypto_pwhash_str, RFC 9106).
std::string hashOfPin(const std::string& pin);
bool opens(const std::string& hash, const std::string& pin);

Problems problemsOfPin(const std::string& pin);  // 4 to 200 bytes, no control characters

// 100 random bits as five groups of four signs, without those that look alike: "K7QX-…".
std::string freshRecoveryCode();
// As it was printed, whatever capitals, spaces and dashes were typed.
std::string readRecoveryCode(const std::string& typed);

}  // namespace steadyturn
