// Shops and CSV files in a folder of their own, gone after the test.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <ostream>
#include <string>

#include "shop.h"

namespace steadyturn {

std::ostream& operator<<(std::ostream& out, const Problem& problem);

class TransferTest : public testing::Test {
 protected:
  TransferTest();
  ~TransferTest() override;

  std::string in(const std::string& name) const { return (folder_ / name).string(); }
  Shop newShop();
  // Writes `bytes` to a file of its own and imports it.
  Result<ImportReport> import(Shop& shop, TableKind kind, const std::string& bytes, const ImportOptions& options = {},
                              const Progress& progress = {});
  // The same, which must go well.
  ImportReport imported(Shop& shop, TableKind kind, const std::string& bytes, const ImportOptions& options = {});
  // The same, which must not; what is wrong.
  Problems refused(Shop& shop, TableKind kind, const std::string& bytes, const ImportOptions& options = {});
  std::string exported(const Shop& shop, TableKind kind, const ExportOptions& options = {});
  // A shop with tool TW-1 (II A, 20 to 100 N.m), tool TW-2 (10 to 50 lbf.ft), reference R1, fasteners F-1 and F-2.
  Shop smallShop();

 private:
  std::filesystem::path folder_;
  int files_ = 0;
};

}  // namespace steadyturn
