// Any bytes as a shop's file, made of real ones: refused or read and proven, never believed blindly.
#include <unistd.h>

#include <QCoreApplication>
#include <cstdio>
#include <fstream>
#include <sstream>

#include "driver.h"
#include "shop_proof.h"

int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size) {
  using namespace steadyturn;
  static int arguments = 1;
  static char name[] = "fuzz";
  static char* values[] = {name, nullptr};
  static const QCoreApplication application(arguments, values);
  const auto path = "/tmp/fuzz-shop-" + std::to_string(::getpid()) + ".db";
  std::ofstream(path, std::ios::binary) << fuzz::textOf(data, size);
  {
    const auto shop = Shop::open(path);
    if (shop) {
      (void)verifyShop(*shop);
      (void)shop->overview(shop->today());
      std::ostringstream out;
      (void)shop->exportCsv(TableKind::Checks, out);
    }
  }
  for (const char* ending : {"", "-wal", "-shm", "-journal"}) std::remove((path + ending).c_str());
  for (int version = 1; version < 20; ++version) {
    std::remove((path + ".before-v" + std::to_string(version)).c_str());
  }
  return 0;
}
