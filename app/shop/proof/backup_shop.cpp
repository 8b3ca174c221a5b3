#include <fcntl.h>
#include <unistd.h>

#include <QFile>
#include <QFileInfo>

#include "copy_shop.h"
#include "inside.h"
#include "shop_address.h"
#include "shop_proof.h"
#include "verifier.h"

namespace steadyturn {

namespace {

Problem cannot(const std::string& path, std::string whatToDo) {
  return {.kind = ProblemKind::CannotCreate, .field = "backup", .found = path, .accepted = std::move(whatToDo)};
}

// A copy under way, under a name that says so; gone unless it was finished.
class Draft {
 public:
  explicit Draft(const QString& path) : path_(path + QStringLiteral(".unfinished")) {}
  ~Draft() {
    for (const auto* ending : {"", "-wal", "-shm", "-journal"}) QFile::remove(path_ + QLatin1String(ending));
  }
  Draft(const Draft&) = delete;
  Draft& operator=(const Draft&) = delete;
  const QString& path() const { return path_; }

 private:
  QString path_;
};

// Only what the disk has written is a backup.
bool reachesTheDisk(const QString& path) {
  const int file = ::open(QFile::encodeName(path).constData(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return false;
  const bool written = ::fsync(file) == 0;
  ::close(file);
  return written;
}

// The engine's own copy, opened as a shop, is sound to the engine, and its ledger is the original's up to its own
// length.
Result<Checkpoint> copyOfFile(Database& original, const QString& path) {
  Statement(original, "VACUUM INTO ?").run(path);
  auto copy = Database::open(path.toStdString());
  if (!copy) return tl::unexpected(copy.error());
  Statement health(*copy, "PRAGMA integrity_check(1)");
  health.run().next();
  const auto sound = health.text(0);
  health.finish();
  const auto head = headOf(*copy);
  if (sound != "ok" || head.root != headOf(original, head.size).root) {
    return refuse(cannot(path.toStdString(), "a shop that is not damaged: verify it (" + sound + ")"));
  }
  return head;
}

}  // namespace

Result<Checkpoint> backupShop(const Shop& shop, const std::string& path) {
  return guarded([&]() -> Result<Checkpoint> {
    const auto target = QFileInfo(QString::fromStdString(path)).absoluteFilePath();
    if (path.empty() || QFileInfo::exists(target))
      return refuse(cannot(path, "the name of a file that does not exist yet"));
    if (!QFileInfo(QFileInfo(target).absolutePath()).isWritable())
      return refuse(cannot(path, "a folder that exists and can be written"));
    const Draft draft(target);
    if (QFileInfo::exists(draft.path())) {
      return refuse(cannot(draft.path().toStdString(), "no unfinished backup of that name: remove it first"));
    }
    auto& database = shop.inside().database;
    auto head = isOnServer(database.address()) ? copyProven(shop, draft.path().toStdString())
                                               : copyOfFile(database, draft.path());
    if (!head) return head;
    if (!reachesTheDisk(draft.path())) return refuse(cannot(path, "a disk that can be written"));
    // A hard link refuses a name that somebody took meanwhile; renaming would put the backup in its place.
    if (::link(QFile::encodeName(draft.path()).constData(), QFile::encodeName(target).constData()) != 0 &&
        (QFileInfo::exists(target) || !QFile::rename(draft.path(), target))) {
      return refuse(cannot(path, "the name of a file that does not exist yet"));
    }
    return head;
  });
}

}  // namespace steadyturn
