#include "save_file.h"

#include <QSaveFile>

#include "text.h"

namespace steadyturn {

Result<void> saveFile(const QString& path, const std::function<Result<void>(QIODevice&)>& write) {
  QSaveFile file(path);
  const auto failed = [&] {
    return refuse({.kind = ProblemKind::CannotCreate,
                   .field = {},
                   .found = toText(path),
                   .accepted = toText(file.errorString())});
  };
  if (!file.open(QIODevice::WriteOnly)) return failed();
  if (Result<void> done = write(file); !done) return done;
  if (!file.commit()) return failed();
  return {};
}

}  // namespace steadyturn
