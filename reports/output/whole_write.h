// The one place where a finished output leaves for its device: all of it, or a problem that says why not.
#pragma once

#include <QByteArray>
#include <QIODevice>

#include "problem.h"

namespace steadyturn {

// Writes every byte and, for files, hands them to the system. A short or failed write is CannotCreate.
// REQUIRES: out open for writing.
Result<void> writeWhole(QIODevice& out, const QByteArray& bytes);

}  // namespace steadyturn
