#include "daily_backup.h"

#include <QDir>
#include <QFileInfo>

#include "settings.h"
#include "shop_keeping.h"
#include "text.h"

namespace steadyturn {

QString backupFolder(const std::string& address) {
  const QFileInfo file(fromText(address));
  return file.absoluteDir().filePath(file.completeBaseName() + QStringLiteral(".backups"));
}

DailyBackup::DailyBackup(OpenShop& shop, QObject* parent) : QObject(parent), shop_(shop), worker_(shop) {
  using namespace std::chrono_literals;
  constexpr auto settled = 5s;  // the window is there and what was asked for first is done
  connect(&again_, &QTimer::timeout, this, &DailyBackup::look);
  again_.start(1h);
  QTimer::singleShot(settled, this, &DailyBackup::look);
}

void DailyBackup::look() {
  const Shop& shop = shop_.shop();
  const int keep = settings::backupsKept();
  if (making_ || keep < 1 || shop.isDemo() || shop.readOnly()) return;
  making_ = worker_.run<bool>(
      [folder = toText(backupFolder(shop.address())), keep](Shop& open, const Progress&) -> Result<bool> {
        const auto made = backupDaily(open, folder, static_cast<std::size_t>(keep));
        if (!made) return tl::unexpected(made.error());
        return made->has_value();
      },
      [this](const Result<bool>& made) {
        making_.reset();
        if (!made) emit failed(made.error());
      });
}

}  // namespace steadyturn
