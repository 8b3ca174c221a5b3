#include "demo_file.h"

#include <QDir>
#include <QStandardPaths>

namespace steadyturn {

QString demoFile() {
  const QString data = QStandardPaths::writableLocation(QStandardPaths::GenericDataLocation);
  const QString folder = QDir(data).filePath(QStringLiteral("steadyturn"));
  QDir().mkpath(folder);
  return QDir(folder).filePath(QStringLiteral("demo-depot.db"));
}

}  // namespace steadyturn
