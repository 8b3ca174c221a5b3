// A shop of wrenches of one kind, checked with figures that a test chooses.
#pragma once

#include <gtest/gtest.h>

#include <QTemporaryDir>

#include "shop.h"

namespace steadyturn::test {

inline Date on(const char* date) { return parseDate(date, "date").value(); }

class WrenchShop : public ::testing::Test {
 protected:
  void SetUp() override {
    Reference reference;
    reference.id = "R";
    reference.expandedUncertaintyPercent = 0.4;
    ASSERT_TRUE(shop.addReference(reference));
  }
  // Type II class A, 20 to 100 N·m.
  static Tool wrench(const std::string& id, const std::string& maker = {}) {
    Tool tool;
    tool.id = id;
    tool.maker = maker;
    tool.kind = {ToolType::Setting, ToolClass::A};
    tool.minimum = 20;
    tool.maximum = 100;
    tool.resolution = 1;
    return tool;
  }
  void addTool(const std::string& id, const std::string& maker = {}) { ASSERT_TRUE(shop.addTool(wrench(id, maker))); }
  // A check whose every reading lies `percent` off.
  static CheckDraft draftOf(const std::string& tool, Date date, double percent) {
    CheckDraft draft;
    draft.tool = tool;
    draft.reference = "R";
    draft.date = date;
    for (const double target : {20.0, 60.0, 100.0}) {
      const auto reading = writeNumber(target / (1 + percent / 100));
      draft.points.push_back({.target = writeNumber(target), .readings = std::vector<std::string>(5, reading)});
    }
    return draft;
  }
  void check(const std::string& tool, Date date, double percent) {
    ASSERT_TRUE(shop.recordCheck(draftOf(tool, date, percent)));
  }

  QTemporaryDir folder;
  Shop shop = *Shop::create(folder.filePath("shop.sturn").toStdString());
};

}  // namespace steadyturn::test
