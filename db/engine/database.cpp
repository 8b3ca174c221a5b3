#include "database.h"

#include <fmt/format.h>
#include <sys/stat.h>

#include <QDateTime>
#include <QFile>
#include <QFileInfo>
#include <QUrl>

#include "connection.h"
#include "engine_trouble.h"
#include "statement.h"

namespace steadyturn {

namespace {

// "Stur": marks a file as a shop of ours (SQLite file format, 1.3.11). The first migration sets it.
constexpr std::int64_t shopMark = 0x53747572;

const QString readWrite = QStringLiteral("QSQLITE_BUSY_TIMEOUT=5000");
const QString readOnlyOptions = QStringLiteral("QSQLITE_BUSY_TIMEOUT=5000;QSQLITE_OPEN_READONLY");
const QString immutableOptions = QStringLiteral("QSQLITE_OPEN_READONLY;QSQLITE_OPEN_URI");

// Absolute, so that no name is taken for a URI or for ":memory:".
QString filePath(const std::string& address) { return QFileInfo(QString::fromStdString(address)).absoluteFilePath(); }

QString immutableUri(const QString& path) {
  return QString::fromLatin1(QUrl::fromLocalFile(path).toEncoded(QUrl::FullyEncoded)) +
         QStringLiteral("?immutable=1");
}

Problem unavailable(const std::string& address, std::string whatToDo) {
  return {.kind = ProblemKind::Unavailable, .field = "shop", .found = address, .accepted = std::move(whatToDo)};
}

std::int64_t pragma(Connection& connection, std::string_view name) {
  Statement statement(connection, fmt::format("PRAGMA {}", name));
  return statement.run().next() ? statement.integer(0) : 0;
}

// What the file system alone says against the file.
std::optional<Problem> refusedByFileSystem(const std::string& address) {
  const QFileInfo file(filePath(address));
  if (!file.exists()) return unavailable(address, "a shop's file; nothing is there (`sturn init` makes a new one)");
  if (file.isDir()) return unavailable(address, "a shop's file; this is a directory");
  if (!file.isFile()) return unavailable(address, "a shop's file; this is not a regular file");
  if (!file.isReadable()) return unavailable(address, "a shop's file that this user may read");
  if (file.size() == 0) return unavailable(address, "a shop's file; this one is empty");
  return std::nullopt;
}

bool hasJournal(const QString& path) { return QFileInfo(path + QStringLiteral("-wal")).size() > 0; }

struct Marks {
  std::int64_t application = 0, version = 0;
};

Marks marksOf(Connection& connection) {
  return {.application = pragma(connection, "application_id"), .version = pragma(connection, "user_version")};
}

// Looks at the file's first page through the engine without locks, journals or a write of any kind: what is refused
// for it is left exactly as it was. (Reading the file by hand would do harm: closing it drops the locks that other
// connections of this process hold; "How To Corrupt An SQLite Database File", 2.2.) Nothing where a program was
// killed while it wrote its journal back, or is at it: then the file alone makes no sense, and the opened shop is to
// be asked.
std::optional<Marks> marksWithoutATouch(const std::string& address) {
  const auto peek = [&] {
    Connection connection(address, immutableUri(filePath(address)), immutableOptions);
    return marksOf(connection);
  };
  try {
    return peek();
  } catch (const StoreError&) {
    if (hasJournal(filePath(address))) return std::nullopt;
  }
  return peek();  // somebody may just have finished writing it back
}

void refuseForeignOrNewer(const Marks& marks, const std::string& address, int newestKnown) {
  if (marks.application != shopMark)
    throw StoreError(unavailable(address, "a shop's file; this is another program's"));
  if (marks.version > newestKnown) {
    throw StoreError(
        unavailable(address, fmt::format("a newer program: the shop is of version {}, this program knows {}; "
                                         "nothing was changed",
                                         marks.version, newestKnown)));
  }
}

// A connection to a shop of ours, made by `connect`.
template <typename Connect>
std::unique_ptr<Connection> connectToOurs(const std::string& address, int newestKnown, const Connect& connect) {
  const auto marks = marksWithoutATouch(address);
  if (marks) refuseForeignOrNewer(*marks, address, newestKnown);
  std::unique_ptr<Connection> connection = connect();
  if (!marks) refuseForeignOrNewer(marksOf(*connection), address, newestKnown);
  return connection;
}

// How the file and its journal stand: their times and sizes.
std::string standOf(const QString& path) {
  QString stand;
  for (const auto* ending : {"", "-wal", "-journal"}) {
    const QFileInfo file(path + QLatin1String(ending));
    stand += QStringLiteral("%1 %2;").arg(file.lastModified().toMSecsSinceEpoch()).arg(file.size());
  }
  return stand.toStdString();
}

void setHabits(Connection& connection, bool writable) {
  const auto set = [&](const char* habit) {
    Statement::execute(connection, QStringLiteral("PRAGMA ") + QLatin1String(habit));
  };
  set("foreign_keys = ON");
  set("trusted_schema = OFF");
  set("cell_size_check = ON");
  // 64 MiB: a large import's pages are then written once, not pushed out to the journal and fetched again.
  set("cache_size = -65536");
  if (!writable) return;
  set("journal_mode = WAL");
  set("synchronous = FULL");
}

bool canBeWritten(const QString& path) {
  const QFileInfo file(path);
  return file.isWritable() && QFileInfo(file.absolutePath()).isWritable();
}

// A shop in write-ahead mode wants two files beside it even to be read. Where they can't be made, the file is read as
// one that nobody changes; not while a journal with somebody's work lies beside it, which would be passed over.
std::unique_ptr<Connection> connectToRead(const std::string& address) {
  const auto path = filePath(address);
  try {
    auto connection = std::make_unique<Connection>(address, path, readOnlyOptions);
    pragma(*connection, "schema_version");
    return connection;
  } catch (const StoreError&) {
    if (hasJournal(path)) throw;
    return std::make_unique<Connection>(address, immutableUri(path), immutableOptions);
  }
}

// Reads the file as one that nobody changes, without a lock or a file beside it; where somebody's work lies in a
// journal beside it, with the locks and files that are there already.
std::unique_ptr<Connection> connectToLook(const std::string& address) {
  const auto path = filePath(address);
  if (hasJournal(path)) return std::make_unique<Connection>(address, path, readOnlyOptions);
  return std::make_unique<Connection>(address, immutableUri(path), immutableOptions);
}

FileIdentity identityOf(const QString& path) {
  struct stat status {};
  if (::stat(QFile::encodeName(path).constData(), &status) != 0) return {};
  return {.device = status.st_dev, .number = status.st_ino};
}

std::string copyBefore(Connection& connection, int version) {
  const auto wanted = fmt::format("{}.before-v{}", filePath(connection.address).toStdString(), version);
  auto path = wanted;
  for (int count = 2; QFileInfo::exists(QString::fromStdString(path)); ++count)
    path = fmt::format("{}-{}", wanted, count);
  // The engine's own copy is whole even while others write; it gets its name when it is.
  const auto draft = QString::fromStdString(path + ".unfinished");
  QFile::remove(draft);
  Statement(connection, "VACUUM INTO ?").run(draft);
  if (!QFile::rename(draft, QString::fromStdString(path)))
    throw StoreError(unavailable(connection.address, "a folder where a copy can be kept before the upgrade"));
  return path;
}

void upgrade(Connection& connection, std::span<const Migration> steps, const std::string& copy) {
  for (const auto& migration : steps) {
    try {
      apply(connection, migration);
    } catch (const StoreError& error) {
      throw StoreError(unavailable(
          connection.address,
          fmt::format("step {} ({}) of the upgrade failed ({}); the shop stays at version {}, and "
                      "as it was before in {}",
                      migration.version, migration.name, error.problem().accepted, migration.version - 1, copy)));
    }
  }
  pragma(connection, "wal_checkpoint(TRUNCATE)");
}

void removeShop(const QString& path) {
  for (const auto* ending : {"", "-journal", "-wal", "-shm"}) QFile::remove(path + QLatin1String(ending));
}

}  // namespace

Database::Database(std::unique_ptr<Connection> connection, std::string address)
    : connection_(std::move(connection)),
      address_(std::move(address)),
      file_(connection_->onServer() ? FileIdentity() : identityOf(filePath(address_))) {}
Database::Database(Database&&) noexcept = default;
Database& Database::operator=(Database&&) noexcept = default;
Database::~Database() = default;

Result<Database> Database::create(const std::string& address) {
  return isOnServer(address) ? createOnServer(address, postgresMigrations()) : create(address, sqliteMigrations());
}

Result<Database> Database::open(const std::string& address) {
  return isOnServer(address) ? openOnServer(address, postgresMigrations(), Use::Work)
                             : open(address, sqliteMigrations());
}

Result<Database> Database::openToLook(const std::string& address) {
  if (isOnServer(address)) return openOnServer(address, postgresMigrations(), Use::Look);
  if (auto problem = refusedByFileSystem(address)) return refuse(std::move(*problem));
  const auto newest = static_cast<int>(sqliteMigrations().size());
  try {
    Database opened(connectToOurs(address, newest, [&] { return connectToLook(address); }), address);
    opened.readOnly_ = true;
    opened.asOpened_ = standOf(filePath(address));
    if (const int found = appliedVersion(opened.connection(), sqliteMigrations()); found < newest) {
      return refuse(unavailable(
          address, fmt::format("a shop of version {}; this one is of version {}: have its lead open it once, or copy "
                               "it and open the copy",
                               newest, found)));
    }
    setHabits(opened.connection(), false);
    opened.version_ = newest;
    return opened;
  } catch (const StoreError& error) {
    return refuse(error.problem());
  }
}

void Database::remove(Database&& unfinished) noexcept {
  try {
    const Database doomed = std::move(unfinished);
    if (!doomed.connection_->onServer()) {
      doomed.connection_->handle().close();
      return removeShop(filePath(doomed.address_));
    }
    Statement::execute(*doomed.connection_, QStringLiteral("SET ROLE NONE"));
    Statement::execute(*doomed.connection_, QStringLiteral("DROP SCHEMA steadyturn CASCADE"));
  } catch (...) {
    // What brought us here is what the person is told.
  }
}

bool Database::isWhereItWas() const { return connection_->onServer() || file_ == identityOf(filePath(address_)); }

bool Database::disturbed() const { return !asOpened_.empty() && asOpened_ != standOf(filePath(address_)); }

Result<Database> Database::create(const std::string& address, std::span<const Migration> migrations) {
  const auto path = filePath(address);
  const auto cannot = [&](std::string whatToDo) {
    return refuse(
        {.kind = ProblemKind::CannotCreate, .field = "shop", .found = address, .accepted = std::move(whatToDo)});
  };
  if (address.empty() || QFileInfo::exists(path)) return cannot("the name of a file that does not exist yet");
  if (QFile file(path); !file.open(QIODevice::WriteOnly | QIODevice::NewOnly)) {
    return cannot("a file in a folder that exists and can be written (" + file.errorString().toStdString() + ")");
  }
  try {
    Database made(std::make_unique<Connection>(address, path, readWrite), address);
    for (const auto& migration : migrations) apply(made.connection(), migration);
    setHabits(made.connection(), true);
    made.version_ = static_cast<int>(migrations.size());
    made.outcome_ = OpenOutcome::Created;
    return made;
  } catch (const StoreError& error) {
    removeShop(path);
    return cannot(error.problem().accepted);
  }
}

Result<Database> Database::open(const std::string& address, std::span<const Migration> migrations) {
  if (auto problem = refusedByFileSystem(address)) return refuse(std::move(*problem));
  const auto newest = static_cast<int>(migrations.size());
  try {
    const bool writable = canBeWritten(filePath(address));
    const auto connect = [&] {
      return writable ? std::make_unique<Connection>(address, filePath(address), readWrite) : connectToRead(address);
    };
    Database opened(connectToOurs(address, newest, connect), address);
    opened.readOnly_ = !writable;
    const int found = appliedVersion(opened.connection(), migrations);
    if (found < newest && !writable) {
      return refuse(
          unavailable(address, fmt::format("the shop is of version {} and would be brought to {}, but it can't be "
                                           "written here: copy it to a folder that can be written",
                                           found, newest)));
    }
    if (found < newest) opened.copy_ = copyBefore(opened.connection(), newest);
    setHabits(opened.connection(), writable);
    if (found < newest) {
      upgrade(opened.connection(), migrations.subspan(static_cast<std::size_t>(found)), opened.copy_);
      opened.outcome_ = OpenOutcome::Upgraded;
    }
    opened.version_ = newest;
    return opened;
  } catch (const StoreError& error) {
    return refuse(error.problem());
  }
}

}  // namespace steadyturn
