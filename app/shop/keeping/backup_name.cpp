#include "backup_name.h"

#include <QFileInfo>
#include <charconv>
#include <regex>

#include "shop_address.h"
#include "shop_keeping.h"

namespace steadyturn {

std::string writeBackupName(const BackupName& name) {
  return name.shop + '.' + name.day + '.' + std::to_string(name.size) + '-' + name.rootBegins + ".backup";
}

std::optional<BackupName> readBackupName(const std::string& fileName) {
  static const std::regex shape(R"((.+)\.(\d{4}-\d\d-\d\d)\.(\d{1,18})-([0-9a-f]{16})\.backup)");
  std::smatch parts;
  if (fileName.size() > 1000 || !std::regex_match(fileName, parts, shape)) return std::nullopt;
  BackupName name{.shop = parts[1], .day = parts[2], .rootBegins = parts[4]};
  const std::string digits = parts[3];
  std::from_chars(digits.data(), digits.data() + digits.size(), name.size);
  return name;
}

BackupName backupName(const std::string& shop, const std::string& day, const Checkpoint& head) {
  return {.shop = shop, .day = day, .size = head.size, .rootBegins = writeHash(head.root).substr(0, 16)};
}

std::string shopNameIn(const std::string& address) {
  if (isOnServer(address)) {
    const auto server = parseServerAddress(address);
    return server ? server->database.toStdString() : std::string();
  }
  return QFileInfo(QString::fromStdString(address)).completeBaseName().toStdString();
}

}  // namespace steadyturn
