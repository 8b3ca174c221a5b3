#include "transfer_fixture.h"

#include <fmt/format.h>

#include <fstream>
#include <random>
#include <sstream>

namespace steadyturn {

std::ostream& operator<<(std::ostream& out, const Problem& problem) {
  return out << fmt::format("[{}] line {} field \"{}\" found \"{}\" accepted \"{}\"", static_cast<int>(problem.kind),
                            problem.line.value_or(0), problem.field, problem.found, problem.accepted);
}

TransferTest::TransferTest() {
  const auto name = "steadyturn-transfer-" + std::to_string(std::random_device{}());
  folder_ = std::filesystem::temp_directory_path() / name;
  std::filesystem::create_directory(folder_);
}

TransferTest::~TransferTest() { std::filesystem::remove_all(folder_); }

Shop TransferTest::newShop() {
  auto shop = Shop::create(in("shop-" + std::to_string(++files_)));
  if (!shop) throw std::runtime_error("no shop: " + shop.error().front().found);
  return std::move(*shop);
}

Result<ImportReport> TransferTest::import(Shop& shop, TableKind kind, const std::string& bytes,
                                          const ImportOptions& options, const Progress& progress) {
  const std::string path = in("file-" + std::to_string(++files_) + ".csv");
  std::ofstream(path, std::ios::binary) << bytes;
  return shop.importCsv(kind, path, options, progress);
}

ImportReport TransferTest::imported(Shop& shop, TableKind kind, const std::string& bytes,
                                    const ImportOptions& options) {
  const auto report = import(shop, kind, bytes, options);
  if (report) return *report;
  for (const Problem& problem : report.error()) ADD_FAILURE() << problem;
  return {};
}

Problems TransferTest::refused(Shop& shop, TableKind kind, const std::string& bytes, const ImportOptions& options) {
  const auto report = import(shop, kind, bytes, options);
  EXPECT_FALSE(report) << "was taken in: " << bytes.substr(0, 200);
  return report ? Problems{} : report.error();
}

std::string TransferTest::exported(const Shop& shop, TableKind kind, const ExportOptions& options) {
  std::ostringstream out;
  const auto done = shop.exportCsv(kind, out, options);
  EXPECT_TRUE(done);
  return out.str();
}

Shop TransferTest::smallShop() {
  Shop shop = newShop();
  imported(shop, TableKind::Tools,
           "tool,type,class,min,max,unit,resolution\n"
           "TW-1,II,A,20,100,N.m,1\n"
           "TW-2,II,A,10,50,lbf.ft,0.5\n");
  imported(shop, TableKind::References, "reference,expanded_uncertainty_percent\nR1,0.4\n");
  imported(shop, TableKind::Fasteners,
           "fastener,component,target,unit\n"
           "F-1,sump drain plug,35,N.m\n"
           "F-2,wheel nut,90,N.m\n");
  return shop;
}

}  // namespace steadyturn
