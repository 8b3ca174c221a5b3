#include "verification.h"

#include <charconv>

namespace steadyturn {

namespace {

// As a scanner types a certificate's symbol.
constexpr std::string_view scannedPrefix = "STURN:L:";

}  // namespace

Result<Checkpoint> parseCheckpoint(std::string_view written, std::string_view field) {
  const auto typed = written.starts_with(scannedPrefix) ? written.substr(scannedPrefix.size()) : written;
  const auto colon = typed.find(':');
  Checkpoint checkpoint;
  if (colon != std::string_view::npos) {
    const auto size = typed.substr(0, colon);
    const auto [end, error] = std::from_chars(size.data(), size.data() + size.size(), checkpoint.size);
    const auto root = parseHash(typed.substr(colon + 1));
    if (error == std::errc() && end == size.data() + size.size() && root) {
      checkpoint.root = *root;
      return checkpoint;
    }
  }
  return refuse(
      {.field = std::string(field),
       .found = std::string(typed),
       .accepted = "SIZE:ROOT as a certificate prints it: the number of entries, a colon, 64 hexadecimal digits"});
}

std::string writeCheckpoint(const Checkpoint& checkpoint) {
  return std::to_string(checkpoint.size) + ':' + writeHash(checkpoint.root);
}

}  // namespace steadyturn
