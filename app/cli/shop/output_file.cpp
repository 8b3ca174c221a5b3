#include "output_file.h"

#include <fcntl.h>
#include <unistd.h>

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fstream>

namespace steadyturn {
namespace {

namespace fs = std::filesystem;

Result<void> cannotWrite(const std::string& path, const std::string& why) {
  return refuse({.kind = ProblemKind::CannotCreate,
                 .field = "output",
                 .found = path,
                 .accepted = "a place that can be written (" + why + ")"});
}

Result<void> writeInto(const std::string& path, const std::string& named,
                       const std::function<Result<void>(std::ostream&)>& write) {
  errno = 0;
  std::ofstream out(path, std::ios::binary | std::ios::trunc);
  if (!out) return cannotWrite(named, std::strerror(errno));
  if (auto written = write(out); !written) return written;
  out.close();
  if (!out) return cannotWrite(named, std::strerror(errno));
  return {};
}

// The bytes are on disk before the new file takes the place of the old one.
bool reachesDisk(const std::string& path) {
  const int file = ::open(path.c_str(), O_RDONLY | O_CLOEXEC);
  if (file < 0) return false;
  const bool done = ::fsync(file) == 0;
  ::close(file);
  return done;
}

}  // namespace

Result<void> writeOutputFile(const std::string& path, const std::function<Result<void>(std::ostream&)>& write) {
  std::error_code trouble;
  const auto status = fs::status(path, trouble);
  if (fs::is_directory(status)) return cannotWrite(path, "it is a directory");
  if (fs::exists(status) && !fs::is_regular_file(status)) return writeInto(path, path, write);
  if (fs::exists(status) && ::access(path.c_str(), W_OK) != 0) return cannotWrite(path, std::strerror(errno));

  // A link stays a link: the file it leads to is the one that is replaced.
  const fs::path target = fs::exists(status) ? fs::canonical(path, trouble) : fs::path(path);
  const std::string beside = target.string() + ".part" + std::to_string(::getpid());
  auto written = writeInto(beside, path, write);
  if (written && !reachesDisk(beside)) written = cannotWrite(path, std::strerror(errno));
  if (written) {
    if (fs::exists(status)) fs::permissions(beside, status.permissions(), trouble);
    fs::rename(beside, target, trouble);
    if (trouble) written = cannotWrite(path, trouble.message());
  }
  if (!written) fs::remove(beside, trouble);
  return written;
}

Result<void> writeOutputFile(const std::string& path, std::string_view bytes) {
  return writeOutputFile(path, [bytes](std::ostream& out) -> Result<void> {
    out.write(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    return {};
  });
}

}  // namespace steadyturn
