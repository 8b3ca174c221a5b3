// What a signature is made over: plain text that anybody can write down and check with public tools. Every statement
// begins with a line that says what it is, so that a signature of one can't stand for another, and every line ends
// with a line feed:
//
//     steadyturn checkpoint v1
//     shop: 4f1d…                     the shop's id
//     key: 0123456789abcdef           id of the key that signs
//     size: 583                       entries of the ledger
//     root: 9f86d0…                   their Merkle root (RFC 9162, 2.1.1)
//     time: 2026-03-14T09:26:53.589Z
//
//     steadyturn key v1
//     shop: 4f1d…
//     key: 0123456789abcdef           id of the new key
//     public: d75a98…                 the new key
//     holder: Petra Quill
//     replaces: fedcba9876543210      or "nothing"
//     lost: burnt down                or "nothing": the key before signs as well
//     size: 583
//     root: 9f86d0…
//     time: 2026-03-14T09:26:53.589Z
#pragma once

#include <string>

#include "signing.h"

namespace steadyturn {

std::string statementOf(const std::string& shop, const SignedCheckpoint& checkpoint);
std::string statementOf(const std::string& shop, const SigningKey& key);

}  // namespace steadyturn
