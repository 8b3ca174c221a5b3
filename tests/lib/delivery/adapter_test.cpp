#include <gtest/gtest.h>

#include "delivery.h"
#include "reference_table.h"

namespace steadyturn {
namespace {

using testing::ReferenceTable;

TEST(Adapter, SettingsForAHundredNewtonMetres) {
  const auto table = ReferenceTable::load("adapter.csv");
  for (std::size_t row = 0; row < table.rows(); ++row) {
    const double angle = table.figure(row, "angle").value;
    const auto setting = table.figure(row, "setting");
    EXPECT_NEAR(100 / adapterFactor({.wrenchLengthMm = 400, .offsetMm = 50, .angleDeg = angle}), setting.value,
                setting.tolerance)
        << angle;
  }
}

// Worked in an aircraft maintenance manual: 135 lbf·in at the bolt, L = 10 in, E = 1.5 in: set 117.39 straight on,
// 158.82 towards the grip.
TEST(Adapter, TheAircraftManualsExample) {
  const auto setting = [](double angle) {
    return 135 / adapterFactor({.wrenchLengthMm = 254, .offsetMm = 38.1, .angleDeg = angle});
  };
  EXPECT_NEAR(setting(0), 117.39, 0.005);
  EXPECT_NEAR(setting(180), 158.82, 0.005);
}

TEST(Adapter, AcrossTheHandleOrWithoutOffsetNothingChanges) {
  EXPECT_NEAR(adapterFactor({.wrenchLengthMm = 400, .offsetMm = 50, .angleDeg = 90}), 1, 1e-15);
  EXPECT_EQ(adapterFactor({.wrenchLengthMm = 400, .offsetMm = 0, .angleDeg = 0}), 1);
}

}  // namespace
}  // namespace steadyturn
