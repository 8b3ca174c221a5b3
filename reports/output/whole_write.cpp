#include "whole_write.h"

#include <QFileDevice>

namespace steadyturn {
namespace {

auto cannotCreate(const QIODevice& out) {
  const auto* file = qobject_cast<const QFileDevice*>(&out);
  return refuse({.kind = ProblemKind::CannotCreate,
                 .field = "output",
                 .found = file ? file->fileName().toStdString() : std::string(),
                 .accepted = out.errorString().toStdString()});
}

}  // namespace

Result<void> writeWhole(QIODevice& out, const QByteArray& bytes) {
  qint64 done = 0;
  while (done < bytes.size()) {
    const qint64 written = out.write(bytes.constData() + done, bytes.size() - done);
    if (written <= 0) return cannotCreate(out);
    done += written;
  }
  // A file is buffered: a full disk shows only when the buffer is handed over.
  if (auto* file = qobject_cast<QFileDevice*>(&out); file && !file->flush()) return cannotCreate(out);
  return {};
}

}  // namespace steadyturn
