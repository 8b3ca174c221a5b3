#include "demo_copy.h"

#include <QFile>
#include <stdexcept>

namespace steadyturn {

DemoCopies::DemoCopies() : original_(in("demo.sturn")), copy_(in("copy.sturn")) {
  if (!Shop::createDemo(original_)) throw std::runtime_error(original_);
}

std::string DemoCopies::in(const std::string& name) const {
  return folder_.filePath(QString::fromStdString(name)).toStdString();
}

std::string DemoCopies::fresh() {
  for (const auto* ending : {"", "-wal", "-shm"})
    QFile::remove(QString::fromStdString(copy_) + QLatin1String(ending));
  if (!QFile::copy(QString::fromStdString(original_), QString::fromStdString(copy_))) throw std::runtime_error(copy_);
  return copy_;
}

DemoCopies& demoCopies() {
  static DemoCopies copies;
  return copies;
}

Verification verified(const std::string& path, const std::optional<Checkpoint>& checkpoint) {
  const auto shop = Shop::open(path);
  if (!shop) throw std::runtime_error(shop.error().front().accepted);
  auto verification = verifyShop(*shop, checkpoint);
  if (!verification) throw std::runtime_error(verification.error().front().accepted);
  return std::move(*verification);
}

std::string listed(const Verification& verification) {
  std::string text;
  for (const auto& fault : verification.faults) text += std::to_string(fault.entry) + ": " + fault.what + "\n";
  return text;
}

}  // namespace steadyturn
