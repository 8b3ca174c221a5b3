#include "issue_file.h"

#include <QBuffer>
#include <QCoreApplication>
#include <QFileInfo>

#include "message_line.h"
#include "problem_text.h"
#include "save_file.h"
#include "text.h"
#include "whole_write.h"

namespace steadyturn {

Result<IssuedFile> issueFile(Shop& shop, const PaperSubject& paper, const QString& path,
                             const std::function<Result<void>(QIODevice&)>& write) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  if (Result<void> done = write(buffer); !done) return tl::unexpected(done.error());
  const QByteArray bytes = buffer.data();
  Result<void> saved = saveFile(path, [&](QIODevice& out) { return writeWhole(out, bytes); });
  if (!saved) return tl::unexpected(saved.error());
  IssuedFile issued{.path = path, .untold = {}};
  const auto entry = recordIssue(shop, paper, toText(QFileInfo(path).suffix().toLower()),
                                 {bytes.constData(), static_cast<std::size_t>(bytes.size())});
  if (!entry) issued.untold = entry.error();
  return issued;
}

void sayIssued(MessageLine& line, const IssuedFile& file) {
  const QString written = QCoreApplication::translate("IssuedFile", "Written: %1").arg(file.path);
  if (file.untold.empty()) return line.say(Tone::Good, written);
  line.say(Tone::Caution, QCoreApplication::translate("IssuedFile", "%1. The ledger does not tell of it: %2")
                              .arg(written, wordProblems(file.untold)));
}

}  // namespace steadyturn
