#include "with_shop.h"

#include <QApplication>
#include <QCoreApplication>
#include <cstdio>

namespace steadyturn {
namespace {

// Qt keeps references to both for as long as the application lives.
struct Arguments {
  int count = 1;
  char name[6] = "sturn";
  char* values[2] = {name, nullptr};
};

// Qt's remarks about a missing desktop session say nothing to somebody who asked for a file.
void dropSessionRemarks(QtMsgType type, const QMessageLogContext& context, const QString& message) {
  if (message.startsWith(QLatin1String("QStandardPaths:"))) return;
  std::fprintf(stderr, "%s\n", qPrintable(qFormatLogMessage(type, context, message)));
}

Result<Output> openAndDo(const std::string& address, const Context::Work& work) {
  auto shop = Shop::open(address);
  if (!shop) return tl::unexpected(std::move(shop.error()));
  return work(*shop);
}

}  // namespace

Result<Output> withShop(const std::string& address, const Context::Work& work, Face face) {
  Arguments arguments;
  if (face == Face::Text) {
    const QCoreApplication application(arguments.count, arguments.values);
    return openAndDo(address, work);
  }
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  qInstallMessageHandler(dropSessionRemarks);
  const QApplication application(arguments.count, arguments.values);
  return openAndDo(address, work);
}

Result<Output> withQt(const Command& work) {
  Arguments arguments;
  const QCoreApplication application(arguments.count, arguments.values);
  return work();
}

}  // namespace steadyturn
