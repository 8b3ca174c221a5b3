#include <fcntl.h>
#include <unistd.h>

#include <QDir>
#include <QFile>
#include <QFileInfo>
#include <array>
#include <optional>

#include "backup_name.h"
#include "copy_shop.h"
#include "inside.h"
#include "shop_address.h"
#include "shop_keeping.h"
#include "shop_proof.h"

namespace steadyturn {

namespace {

constexpr std::array endings{"", "-wal", "-shm", "-journal"};

Problem cannot(const QString& path, std::string whatToDo) {
  return {.kind = ProblemKind::CannotCreate,
          .field = "shop",
          .found = path.toStdString(),
          .accepted = std::move(whatToDo)};
}

Problem noBackup(const QString& path, std::string found) {
  return {.kind = ProblemKind::Conflict,
          .field = path.toStdString(),
          .found = std::move(found),
          .accepted = "a backup that is whole; take another one"};
}

// The shop to be, under a name that says so; gone unless it got its place.
class RestoreDraft {
 public:
  explicit RestoreDraft(const QString& target) : path_(target + QStringLiteral(".restoring")) {}
  ~RestoreDraft() {
    const QFileInfo file(path_);
    // An upgrade of the copy keeps a copy of its own, which the backup is already.
    for (const auto& left : file.dir().entryList({file.fileName() + QStringLiteral("*")}, QDir::Files | QDir::Hidden))
      file.dir().remove(left);
  }
  RestoreDraft(const RestoreDraft&) = delete;
  RestoreDraft& operator=(const RestoreDraft&) = delete;
  const QString& path() const { return path_; }

 private:
  QString path_;
};

std::optional<Problem> refusedBackup(const QString& backup) {
  const QFileInfo file(backup);
  if (!file.isFile() || !file.isReadable()) {
    return Problem{.kind = ProblemKind::FileMissing,
                   .field = "backup",
                   .found = backup.toStdString(),
                   .accepted = "a backup that this user may read"};
  }
  if (QFileInfo(backup + QStringLiteral("-wal")).size() > 0) {
    return noBackup(backup, "a shop that somebody works in, no backup at rest");
  }
  return std::nullopt;
}

// A program that has a shop open holds a shared lock on its file as long ("File Locking And Concurrency In SQLite":
// the shared range begins at byte 1 GiB + 2 and has 510 bytes). REQUIRES: this process has it not open.
bool isOpenSomewhere(const QString& path) {
  const int file = ::open(QFile::encodeName(path).constData(), O_RDWR | O_CLOEXEC);
  if (file < 0) return false;
  constexpr off_t sharedFirst = 0x40000000 + 2;
  constexpr off_t sharedSize = 510;
  struct flock lock {};
  lock.l_type = F_WRLCK;
  lock.l_whence = SEEK_SET;
  lock.l_start = sharedFirst;
  lock.l_len = sharedSize;
  const bool held = ::fcntl(file, F_GETLK, &lock) == 0 && lock.l_type != F_UNLCK;
  ::close(file);
  return held;
}

bool reachesDisk(const QString& path, int flags) {
  const int file = ::open(QFile::encodeName(path).constData(), flags | O_CLOEXEC);
  if (file < 0) return false;
  const bool written = ::fsync(file) == 0;
  ::close(file);
  return written;
}

// Copies the backup, opens the copy as a shop of this program's version, and proves it.
Result<Checkpoint> provenCopy(const QString& backup, const QString& draft) {
  if (!QFile::copy(backup, draft)) return refuse(cannot(draft, "a folder with room that can be written"));
  QFile::setPermissions(draft, QFile::ReadOwner | QFile::WriteOwner | QFile::ReadGroup | QFile::ReadOther);
  const auto shop = Shop::open(draft.toStdString());
  if (!shop) return tl::unexpected(shop.error());
  const auto proof = verifyShop(*shop);
  if (!proof) return tl::unexpected(proof.error());
  if (!proof->intact()) return refuse(noBackup(backup, proof->faults.front().what));
  auto head = ledgerHead(*shop);
  if (!head) return head;
  const auto told = readBackupName(QFileInfo(backup).fileName().toStdString());
  if (told && *told != backupName(told->shop, told->day, *head)) {
    return refuse(noBackup(backup, "the ledger head " + writeCheckpoint(*head) + ", which its name does not tell"));
  }
  return head;
}

// Beside the shop, under a name that is free.
Result<QString> putAside(const QString& target) {
  QString aside = target + QStringLiteral(".before-restore");
  for (int count = 2; QFileInfo::exists(aside); ++count)
    aside = target + QStringLiteral(".before-restore-%1").arg(count);
  for (const auto* ending : endings) {
    const QString part = target + QLatin1String(ending);
    if (QFileInfo::exists(part) && !QFile::rename(part, aside + QLatin1String(ending))) {
      return refuse(cannot(target, "a folder that can be written"));
    }
  }
  return aside;
}

Result<Restored> restoreOnServer(const QString& backup, const std::string& address) {
  // The backup is opened as what it is, a file that nobody changes.
  const auto shop = Shop::open(backup.toStdString(), Access::Look);
  if (!shop) return tl::unexpected(shop.error());
  const auto head = copyProven(*shop, address);
  if (!head) return tl::unexpected(head.error());
  return Restored{.head = *head, .old = {}};
}

}  // namespace

Result<Restored> restoreShop(const std::string& backup, const std::string& address, bool replace) {
  return guarded([&]() -> Result<Restored> {
    const auto source = QFileInfo(QString::fromStdString(backup)).absoluteFilePath();
    if (auto refused = refusedBackup(source)) return refuse(std::move(*refused));
    if (isOnServer(address)) return restoreOnServer(source, address);
    const auto target = QFileInfo(QString::fromStdString(address)).absoluteFilePath();
    const bool there = QFileInfo::exists(target);
    if (address.empty() || (there && !replace)) {
      return refuse(cannot(target, "the name of a file that does not exist yet; replacing a shop must be asked for"));
    }
    if (there && isOpenSomewhere(target)) {
      return refuse({.kind = ProblemKind::Unavailable,
                     .field = "shop",
                     .found = address,
                     .accepted = "a shop that nobody has open: close it everywhere first"});
    }
    const RestoreDraft draft(target);
    if (QFileInfo::exists(draft.path())) {
      return refuse(cannot(draft.path(), "no restore of that name under way: remove its rest first"));
    }
    const auto head = provenCopy(source, draft.path());
    if (!head) return tl::unexpected(head.error());
    if (!reachesDisk(draft.path(), O_RDONLY)) return refuse(cannot(target, "a disk that can be written"));
    Restored restored{.head = *head, .old = {}};
    if (there) {
      const auto aside = putAside(target);
      if (!aside) return tl::unexpected(aside.error());
      restored.old = aside->toStdString();
    }
    if (!QFile::rename(draft.path(), target)) return refuse(cannot(target, "a folder that can be written"));
    reachesDisk(QFileInfo(target).absolutePath(), O_RDONLY | O_DIRECTORY);
    return restored;
  });
}

}  // namespace steadyturn
