// A shop of its own in a folder of its own, driven by the built program.
#pragma once

#include <gtest/gtest.h>

#include <filesystem>
#include <string>
#include <vector>

#include "run_sturn.h"

namespace steadyturn::test {

class TempFolder {
 public:
  TempFolder();
  ~TempFolder();
  TempFolder(const TempFolder&) = delete;
  TempFolder& operator=(const TempFolder&) = delete;
  std::string path(const std::string& name) const { return (folder_ / name).string(); }
  // Writes a file and returns its path.
  std::string file(const std::string& name, const std::string& bytes) const;
  std::string read(const std::string& name) const;
  std::size_t entries() const;  // how many files stand in it

 private:
  std::filesystem::path folder_;
};

// Runs `sturn` on `shop`.
Answer onShop(const std::string& shop, std::vector<std::string> arguments, const Setting& setting = {});

// Each test has a new, empty shop.
class NewShop : public ::testing::Test {
 protected:
  NewShop();
  Answer run(std::vector<std::string> arguments) const { return onShop(shop, std::move(arguments)); }
  // Runs what must succeed, and gives its JSON.
  nlohmann::json ask(std::vector<std::string> arguments) const;
  // A tool T1 (II A, 20 to 100 N·m, graduation 1) and a reference R1 (0.4 %, k = 2).
  void addToolAndReference() const;
  Answer record(const std::string& date, const std::string& phase, const std::string& csv) const;

  TempFolder folder;
  std::string shop = folder.path("shop.st");
};

// One demo depot for all tests of a suite; they only read it.
class DemoShop : public ::testing::Test {
 protected:
  static void SetUpTestSuite();
  static void TearDownTestSuite();
  static Answer run(std::vector<std::string> arguments);
  static nlohmann::json ask(std::vector<std::string> arguments);
  static TempFolder* folder;
};

}  // namespace steadyturn::test
