#include "import_file.h"

#include <array>
#include <filesystem>
#include <system_error>

namespace steadyturn {

Problem unreadable(const std::string& path, const std::string& why) {
  return {.kind = ProblemKind::FileMissing, .field = path, .found = why, .accepted = "a CSV file that can be read"};
}

Result<ImportFile> ImportFile::open(const std::string& path) {
  std::error_code trouble;
  const auto status = std::filesystem::status(path, trouble);
  if (!std::filesystem::exists(status)) {
    const bool missing = status.type() == std::filesystem::file_type::not_found;
    return refuse(unreadable(path, missing ? "no such file" : trouble.message()));
  }
  if (std::filesystem::is_directory(status)) return refuse(unreadable(path, "a directory"));
  std::ifstream stream;
  // The reader takes large pieces; a second buffer would only copy them.
  stream.rdbuf()->pubsetbuf(nullptr, 0);
  stream.open(path, std::ios::binary);
  if (!stream) return refuse(unreadable(path, "a file that may not be read"));
  const auto size = std::filesystem::is_regular_file(status) ? std::filesystem::file_size(path, trouble) : 0;
  return ImportFile(std::move(stream), trouble ? 0 : size);
}

ImportFile::ImportFile(std::ifstream stream, std::uintmax_t size) : stream_(std::move(stream)), size_(size) {
  crypto_hash_sha256_init(&hash_);
}

std::size_t ImportFile::read(char* into, std::size_t room) {
  stream_.read(into, static_cast<std::streamsize>(room));
  const auto got = static_cast<std::size_t>(stream_.gcount());
  failed_ = stream_.bad();
  given_ += got;
  crypto_hash_sha256_update(&hash_, reinterpret_cast<const unsigned char*>(into), got);
  return got;
}

double ImportFile::fraction() const {
  return size_ == 0 ? 0 : static_cast<double>(given_) / static_cast<double>(size_);
}

std::string ImportFile::sha256() {
  std::array<unsigned char, crypto_hash_sha256_BYTES> bytes{};
  crypto_hash_sha256_final(&hash_, bytes.data());
  std::array<char, 2 * crypto_hash_sha256_BYTES + 1> hex{};
  sodium_bin2hex(hex.data(), hex.size(), bytes.data(), bytes.size());
  return hex.data();
}

}  // namespace steadyturn
