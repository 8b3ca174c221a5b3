// A file being read once from end to end: its bytes, the hash it is recognised by, how far it is.
#pragma once

#include <sodium.h>

#include <cstdint>
#include <fstream>
#include <string>

#include "problem.h"

namespace steadyturn {

class ImportFile {
 public:
  // Problems (FileMissing): no such file, a directory, one that may not be read.
  static Result<ImportFile> open(const std::string& path);

  // Puts up to `room` bytes at `into` and says how many; 0 at the end, and when reading failed.
  std::size_t read(char* into, std::size_t room);
  bool failed() const { return failed_; }
  // 0 … 1; 0 for what has no size (a pipe).
  double fraction() const;
  // SHA-256 (FIPS 180-4) of all the bytes given so far, in hexadecimal digits. Call it once, at the end.
  std::string sha256();

 private:
  ImportFile(std::ifstream stream, std::uintmax_t size);

  std::ifstream stream_;
  std::uintmax_t size_ = 0;
  std::uintmax_t given_ = 0;
  bool failed_ = false;
  crypto_hash_sha256_state hash_{};
};

// The problem of a file that can't be had, for `why` ("no such file").
Problem unreadable(const std::string& path, const std::string& why);

}  // namespace steadyturn
