#include "inside.h"
#include "shop_proof.h"
#include "snapshot.h"

namespace steadyturn {

Result<void> walkLedger(const Shop& shop, const std::function<bool(std::string_view)>& see) {
  return guarded([&]() -> Result<void> {
    auto& database = shop.inside().database;
    const Snapshot snapshot(database);
    Statement entries(database, "SELECT entry FROM ledger ORDER BY seq");
    entries.run();
    while (entries.next()) {
      const QByteArray bytes = entries.bytes(0);
      if (!see({bytes.constData(), static_cast<std::size_t>(bytes.size())})) break;
    }
    return {};
  });
}

}  // namespace steadyturn
