#include <QDateTime>
#include <QDir>
#include <QFile>
#include <QUuid>
#include <algorithm>
#include <set>

#include "backup_name.h"
#include "inside.h"
#include "shop_keeping.h"
#include "shop_proof.h"

namespace steadyturn {

namespace {

std::vector<std::string> filesIn(const QDir& folder) {
  std::vector<std::string> names;
  for (const auto& name : folder.entryList(QDir::Files | QDir::Hidden)) names.push_back(name.toStdString());
  return names;
}

std::string todayOf(const Shop& shop) { return shop.inside().now().substr(0, std::string_view("0000-00-00").size()); }

// What a program that was killed at its copying left behind.
void clearRests(const QDir& folder) {
  const auto yesterday = QDateTime::currentDateTime().addDays(-1);
  for (const auto& info : folder.entryInfoList({QStringLiteral(".backup-*")}, QDir::Files | QDir::Hidden)) {
    if (info.lastModified() < yesterday) QFile::remove(info.filePath());
  }
}

Problem unwritable(const std::string& folder) {
  return {.kind = ProblemKind::CannotCreate,
          .field = "backup",
          .found = folder,
          .accepted = "a folder that exists or can be made"};
}

}  // namespace

std::vector<std::string> outdatedBackups(std::vector<std::string> names, const std::string& shopName,
                                         std::size_t keep) {
  constexpr std::size_t months = 12;
  std::erase_if(names, [&](const std::string& name) {
    const auto read = readBackupName(name);
    return !read || read->shop != shopName;
  });
  std::ranges::sort(names, [](const std::string& one, const std::string& other) {
    const auto a = readBackupName(one), b = readBackupName(other);
    return std::pair(a->day, a->size) > std::pair(b->day, b->size);
  });
  std::set<std::string> monthsKept;
  std::vector<std::string> outdated;
  for (std::size_t i = 0; i < names.size(); ++i) {
    const auto month = readBackupName(names[i])->day.substr(0, 7);
    const bool lastOfMonth = monthsKept.size() < months && monthsKept.insert(month).second;
    if (i >= std::max<std::size_t>(keep, 1) && !lastOfMonth) outdated.push_back(names[i]);
  }
  return outdated;
}

Result<KeptBackup> backupInto(const Shop& shop, const std::string& folder, std::size_t keep) {
  return guarded([&]() -> Result<KeptBackup> {
    const QDir place(QString::fromStdString(folder));
    if (folder.empty() || !place.mkpath(QStringLiteral("."))) return refuse(unwritable(folder));
    clearRests(place);
    const auto expected = ledgerHead(shop);
    if (!expected) return tl::unexpected(expected.error());
    const auto name = shopNameIn(shop.address());
    const auto fileFor = [&](const Checkpoint& head) {
      return place.filePath(QString::fromStdString(writeBackupName(backupName(name, todayOf(shop), head))));
    };
    KeptBackup kept{.file = fileFor(*expected).toStdString(), .head = *expected, .made = false, .removed = {}};
    if (!QFile::exists(fileFor(*expected))) {
      const auto draft =
          place.filePath(QStringLiteral(".backup-%1").arg(QUuid::createUuid().toString(QUuid::WithoutBraces)));
      const auto head = backupShop(shop, draft.toStdString());
      if (!head) return tl::unexpected(head.error());
      // Others may have written since the head was asked for: the name tells what the copy holds.
      kept.head = *head;
      kept.file = fileFor(*head).toStdString();
      kept.made = QFile::rename(draft, fileFor(*head));
      if (!kept.made) QFile::remove(draft);  // another program has just made the same one
    }
    for (const auto& old : outdatedBackups(filesIn(place), name, keep)) {
      if (QFile::remove(place.filePath(QString::fromStdString(old)))) kept.removed.push_back(old);
    }
    return kept;
  });
}

Result<std::optional<KeptBackup>> backupDaily(const Shop& shop, const std::string& folder, std::size_t keep) {
  const auto name = shopNameIn(shop.address());
  const auto today = todayOf(shop);
  for (const auto& file : filesIn(QDir(QString::fromStdString(folder)))) {
    const auto read = readBackupName(file);
    if (read && read->shop == name && read->day == today) return std::nullopt;
  }
  auto kept = backupInto(shop, folder, keep);
  if (!kept) return tl::unexpected(kept.error());
  return std::optional(std::move(*kept));
}

}  // namespace steadyturn
