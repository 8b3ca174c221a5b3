// steadyturn [SHOP]: the desktop.
#include <QApplication>
#include <QCommandLineParser>
#include <QFileInfo>
#include <QIcon>

#include "main_window.h"
#include "settings.h"

namespace {

QString wantedShop(const QCommandLineParser& line) {
  const QStringList given = line.positionalArguments();
  if (given.isEmpty()) return steadyturn::settings::lastShop();
  return given.first().contains(QLatin1String("://")) ? given.first() : QFileInfo(given.first()).absoluteFilePath();
}

}  // namespace

int main(int argc, char** argv) {
  QApplication application(argc, argv);
  QApplication::setApplicationName(QStringLiteral("steadyturn"));
  QApplication::setOrganizationName(QStringLiteral("steadyturn"));
  QApplication::setApplicationVersion(QStringLiteral(STEADYTURN_VERSION));
  QApplication::setDesktopFileName(QStringLiteral("steadyturn"));
  QApplication::setWindowIcon(QIcon::fromTheme(QStringLiteral("steadyturn")));

  QCommandLineParser line;
  line.setApplicationDescription(QStringLiteral(
      "Torque wrenches that can be believed, and joints that hold: the desktop of a shop.\n"
      "Without SHOP the last one is opened, or a page that offers a demo, a new shop or one that is there."));
  line.addHelpOption();
  line.addVersionOption();
  const QCommandLineOption themeOption(QStringLiteral("theme"),
                                       QStringLiteral("Colours for this start: system, light, dark or contrast."),
                                       QStringLiteral("theme"));
  line.addOption(themeOption);
  const QCommandLineOption auditOption(
      QStringLiteral("audit"),
      QStringLiteral("Open SHOP to be looked at alone: nothing is written to it or beside it, and the next\n"
                     "start opens the shop of before."));
  line.addOption(auditOption);
  line.addPositionalArgument(QStringLiteral("SHOP"),
                             QStringLiteral("The shop: its file, or postgresql://SERVER/DATABASE."),
                             QStringLiteral("[SHOP]"));
  line.process(application);

  constexpr int badUsage = 64;
  steadyturn::Theme theme = steadyturn::settings::theme();
  if (line.isSet(themeOption)) {
    const auto asked = steadyturn::parseTheme(line.value(themeOption));
    if (!asked) {
      qCritical("--theme: \"%s\" is not one of system, light, dark, contrast", qPrintable(line.value(themeOption)));
      return badUsage;
    }
    theme = *asked;
  }
  if (line.positionalArguments().size() > 1) {
    qCritical("one SHOP at a time: see steadyturn --help");
    return badUsage;
  }
  steadyturn::applyTheme(application, theme);

  steadyturn::MainWindow window;
  window.show();
  const QString shop = wantedShop(line);
  const auto access = line.isSet(auditOption) ? steadyturn::Access::Look : steadyturn::Access::Work;
  if (!shop.isEmpty()) window.openShop(shop, access);
  return QApplication::exec();
}
