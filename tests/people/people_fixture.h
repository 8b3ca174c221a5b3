// A shop of its own with people in it.
#pragma once

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include <QTemporaryDir>
#include <string>

#include "shop_people.h"
#include "shop_proof.h"

namespace steadyturn {

inline ProblemKind kindOf(const Problems& problems) { return problems.front().kind; }

class PeopleTest : public testing::Test {
 protected:
  std::string in(const std::string& name) const {
    return folder_.filePath(QString::fromStdString(name)).toStdString();
  }
  // Nora leads, Petra tightens, Olaf audits; nobody is signed in.
  void closeShop() {
    recoveryCode_ = addUser(shop_, "Nora", AccountRole::Lead, leadPin).value().recoveryCode;
    ASSERT_TRUE(signIn(shop_, "Nora", leadPin));
    ASSERT_TRUE(addUser(shop_, "Petra", AccountRole::Technician, "2468"));
    ASSERT_TRUE(addUser(shop_, "Olaf", AccountRole::Auditor, "1357"));
    signOut(shop_);
  }
  static Tool tool(const std::string& id) {
    Tool tool;
    tool.id = id;
    tool.kind = {ToolType::Setting, ToolClass::A};
    tool.minimum = 20;
    tool.maximum = 100;
    tool.resolution = 1;
    return tool;
  }

  static constexpr const char* leadPin = "long passphrase";
  QTemporaryDir folder_;
  std::string path_ = in("shop.st");
  Shop shop_ = Shop::create(path_).value();
  std::string recoveryCode_;
};

}  // namespace steadyturn
