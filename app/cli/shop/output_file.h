// A file that a command writes: complete, or not there.
#pragma once

#include <functional>
#include <ostream>
#include <string>
#include <string_view>

#include "problem.h"

namespace steadyturn {

// Writes beside `path` and puts the file in its place when all of it is on disk; what stood there before stays until
// then. Something that is no regular file (a device, a pipe) is written into directly. CannotCreate otherwise.
Result<void> writeOutputFile(const std::string& path, const std::function<Result<void>(std::ostream&)>& write);
Result<void> writeOutputFile(const std::string& path, std::string_view bytes);

}  // namespace steadyturn
