#include <gtest/gtest.h>

#include <QApplication>
#include <QSettings>
#include <QStandardPaths>
#include <QTemporaryDir>

#include "theme.h"

int main(int argc, char** argv) {
  // Also when the build asks for the list of tests, where no display is.
  if (!qEnvironmentVariableIsSet("QT_QPA_PLATFORM")) qputenv("QT_QPA_PLATFORM", "offscreen");
  // Nothing of the person who runs the tests is read or changed.
  const QTemporaryDir home;
  qputenv("XDG_DATA_HOME", home.filePath("data").toUtf8());
  qputenv("XDG_CONFIG_HOME", home.filePath("config").toUtf8());
  ::testing::InitGoogleTest(&argc, argv);
  QApplication application(argc, argv);
  QApplication::setApplicationName("steadyturn");
  QApplication::setOrganizationName("steadyturn");
  QSettings::setPath(QSettings::NativeFormat, QSettings::UserScope, home.path());
  steadyturn::applyTheme(application, steadyturn::Theme::Light);
  return RUN_ALL_TESTS();
}
