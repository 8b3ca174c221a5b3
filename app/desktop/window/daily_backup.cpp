#include "daily_backup.h"

#include <QDir>
#include <QFileInfo>
#include <QStandardPaths>

#include "settings.h"
#include "shop_keeping.h"
#include "text.h"

namespace steadyturn {

QString backupFolder(const Shop& shop) {
  if (shop.onServer()) {
    const QDir data(QStandardPaths::writableLocation(QStandardPaths::AppDataLocation));
    return data.filePath(fromText(shopNameIn(shop.address())) + QStringLiteral(".backups"));
  }
  const QFileInfo file(fromText(shop.address()));
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
      [folder = toText(backupFolder(shop)), keep](Shop& open, const Progress&) -> Result<bool> {
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
