// A file that is complete or not there.
#pragma once

#include <QIODevice>
#include <QString>
#include <functional>

#include "problem.h"

namespace steadyturn {

Result<void> saveFile(const QString& path, const std::function<Result<void>(QIODevice&)>& write);

}  // namespace steadyturn
