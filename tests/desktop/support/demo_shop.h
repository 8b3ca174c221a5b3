// A demo depot of the test's own, in a folder that goes with it.
#pragma once

#include <gtest/gtest.h>

#include <QTemporaryDir>

#include "shop.h"

namespace steadyturn {

class DemoShop : public ::testing::Test {
 protected:
  void SetUp() override;
  QString file(const QString& name) const { return folder_.filePath(name); }
  QString shopFile() const { return file("depot.db"); }
  Shop open() const;  // another connection to it

 private:
  QTemporaryDir folder_;
};

}  // namespace steadyturn
