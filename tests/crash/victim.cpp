// victim WORK SHOP [ARGUMENT]: works till it is killed, and answers each thing done with one byte.
#include <unistd.h>

#include <QCoreApplication>
#include <string_view>

#include "crash_shop.h"
#include "shop_keeping.h"

namespace {

using namespace steadyturn;

template <typename Done>
int answer(const Done& done) {
  const char byte = '.';
  return done && write(STDOUT_FILENO, &byte, 1) == 1 ? 0 : 1;
}

int saveForEver(Shop& shop, int day) {
  for (;; ++day) {
    if (answer(shop.recordCheck(checkOfDay(day))) != 0) return 1;
  }
}

}  // namespace

int main(int argc, char** argv) {
  const QCoreApplication application(argc, argv);
  if (argc != 4) return 64;
  const std::string_view work = argv[1];
  if (work == "restore") return answer(restoreShop(argv[3], argv[2], true));
  auto shop = Shop::open(argv[2]);
  if (work == "open" || !shop) return answer(shop);
  if (work == "save") return saveForEver(*shop, std::stoi(argv[3]));
  if (work == "import") return answer(shop->importCsv(TableKind::Checks, argv[3], {}));
  if (work == "backup") return answer(backupInto(*shop, argv[3]));
  return 64;
}
