#include "large_shop.h"

#include <fmt/format.h>

#include <array>
#include <fstream>
#include <random>
#include <stdexcept>

namespace steadyturn {

namespace {

constexpr std::array setPoints{20, 60, 100};

void writeTools(const std::string& path, int tools) {
  std::ofstream out(path, std::ios::binary);
  out << "tool,type,class,min,max,unit,resolution\r\n";
  for (int i = 1; i <= tools; ++i) out << fmt::format("TW-{:04},II,A,20,100,N.m,1\r\n", i);
}

void writeChecks(const std::string& path, int tools, int checksEach) {
  std::ofstream out(path, std::ios::binary);
  out << "tool,date,phase,target,reading,unit,reference,by\r\n";
  std::mt19937 random(7);
  for (int check = 0; check < checksEach; ++check) {
    // The newest check lies a day or so before the end of 2025 for every shop, however long its history.
    const auto day = writeDate(std::chrono::sys_days(std::chrono::year(2025) / 12 / 31) -
                               std::chrono::days(30 * (checksEach - check)));
    for (int tool = 1; tool <= tools; ++tool) {
      for (const int target : setPoints) {
        for (int i = 0; i < 5; ++i) {
          const double share = static_cast<double>(random() % 2001) / 100'000;
          out << fmt::format("TW-{:04},{},as_found,{},{:.2f},N.m,R1,bench\r\n", tool, day, target,
                             target * (0.99 + share));
        }
      }
    }
  }
}

template <typename T>
void demand(const Result<T>& result) {
  if (!result) throw std::runtime_error(result.error().front().field + ": " + result.error().front().accepted);
}

}  // namespace

Shop makeLargeShop(const std::string& folder, const std::string& name, int tools, int checksEach) {
  auto shop = Shop::create(folder + "/" + name + ".sqlite");
  demand(shop);
  Reference reference;
  reference.id = "R1";
  reference.expandedUncertaintyPercent = 0.4;
  demand(shop->addReference(reference));
  Fastener bolt;
  bolt.id = "F-1";
  bolt.component = "bolt";
  bolt.target = 60;
  demand(shop->addFastener(bolt));
  const auto file = folder + "/" + name + ".csv";
  writeTools(file, tools);
  demand(shop->importCsv(TableKind::Tools, file, {}));
  writeChecks(file, tools, checksEach);
  demand(shop->importCsv(TableKind::Checks, file, {}));
  return std::move(*shop);
}

}  // namespace steadyturn
