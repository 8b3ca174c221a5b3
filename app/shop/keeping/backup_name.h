// How a backup is called: the shop's name, the day, and the ledger's head.
#pragma once

#include <cstdint>
#include <optional>
#include <string>

#include "verification.h"

namespace steadyturn {

struct BackupName {
  std::string shop, day;   // "depot", "2026-03-14"
  std::uint64_t size = 0;  // of the ledger
  std::string rootBegins;  // the first 16 hexadecimal digits of its root
  bool operator==(const BackupName&) const = default;
};
std::string writeBackupName(const BackupName& name);  // without a folder
std::optional<BackupName> readBackupName(const std::string& fileName);
BackupName backupName(const std::string& shop, const std::string& day, const Checkpoint& head);

}  // namespace steadyturn
