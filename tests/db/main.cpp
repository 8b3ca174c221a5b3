#include <gtest/gtest.h>

#include <QCoreApplication>

// Qt loads its database driver only where there is an application.
int main(int argc, char** argv) {
  QCoreApplication application(argc, argv);
  testing::InitGoogleTest(&argc, argv);
  return RUN_ALL_TESTS();
}
