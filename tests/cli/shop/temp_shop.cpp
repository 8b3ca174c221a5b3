#include "temp_shop.h"

#include <cstdlib>
#include <fstream>
#include <iterator>

namespace steadyturn::test {
namespace {

nlohmann::json jsonOf(const Answer& answer) {
  EXPECT_EQ(answer.status, 0) << answer.err;
  return answer.status == 0 ? answer.json() : nlohmann::json();
}

}  // namespace

TempFolder::TempFolder() {
  std::string pattern = (std::filesystem::temp_directory_path() / "sturn-test-XXXXXX").string();
  if (::mkdtemp(pattern.data()) == nullptr) throw std::runtime_error("no temporary folder");
  folder_ = pattern;
}

TempFolder::~TempFolder() {
  std::error_code ignored;
  std::filesystem::remove_all(folder_, ignored);
}

std::string TempFolder::file(const std::string& name, const std::string& bytes) const {
  std::ofstream(path(name), std::ios::binary) << bytes;
  return path(name);
}

std::string TempFolder::read(const std::string& name) const {
  std::ifstream in(path(name), std::ios::binary);
  return {std::istreambuf_iterator<char>(in), {}};
}

std::size_t TempFolder::entries() const {
  return static_cast<std::size_t>(std::distance(std::filesystem::directory_iterator(folder_), {}));
}

Answer onShop(const std::string& shop, std::vector<std::string> arguments, const Setting& setting) {
  arguments.insert(arguments.begin(), {"--shop", shop});
  return sturn(arguments, setting);
}

NewShop::NewShop() {
  const Answer answer = sturn({"init", shop});
  EXPECT_EQ(answer.status, 0) << answer.err;
}

nlohmann::json NewShop::ask(std::vector<std::string> arguments) const {
  arguments.emplace_back("--json");
  return jsonOf(run(std::move(arguments)));
}

void NewShop::addToolAndReference() const {
  const Answer tool = run({"tool", "add", "T1", "--type", "II", "--class", "A", "--min", "20", "--max", "100",
                           "--unit", "Nm", "--resolution", "1"});
  ASSERT_EQ(tool.status, 0) << tool.err;
  const Answer reference = run({"reference", "add", "R1", "--expanded-uncertainty-percent", "0.4"});
  ASSERT_EQ(reference.status, 0) << reference.err;
}

Answer NewShop::record(const std::string& date, const std::string& phase, const std::string& csv) const {
  return run({"check", "record", "--tool", "T1", "--reference", "R1", "--phase", phase, "--date", date, "--readings",
              folder.file("readings.csv", csv)});
}

TempFolder* DemoShop::folder = nullptr;

void DemoShop::SetUpTestSuite() {
  folder = new TempFolder;
  const Answer answer = sturn({"demo", folder->path("demo.st")});
  ASSERT_EQ(answer.status, 0) << answer.err;
}

void DemoShop::TearDownTestSuite() {
  delete folder;
  folder = nullptr;
}

Answer DemoShop::run(std::vector<std::string> arguments) {
  return onShop(folder->path("demo.st"), std::move(arguments));
}

nlohmann::json DemoShop::ask(std::vector<std::string> arguments) {
  arguments.emplace_back("--json");
  return jsonOf(run(std::move(arguments)));
}

}  // namespace steadyturn::test
