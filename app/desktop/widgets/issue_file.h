// A paper that leaves the desktop: a file that is complete or not there, and an entry in the shop's ledger with the
// hash of its bytes.
#pragma once

#include <QIODevice>
#include <QString>
#include <functional>

#include "shop_signing.h"

namespace steadyturn {

struct IssuedFile {
  QString path;
  Problems untold;  // why the ledger does not tell of it, though the file is there; empty: it does
};
// Problems: what kept the file from being written.
Result<IssuedFile> issueFile(Shop& shop, const PaperSubject& paper, const QString& path,
                             const std::function<Result<void>(QIODevice&)>& write);

class MessageLine;
// That it is written; where the ledger does not tell of it, why.
void sayIssued(MessageLine& line, const IssuedFile& file);

}  // namespace steadyturn
