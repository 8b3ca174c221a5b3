#include "rewritten_log.h"

#include <QByteArray>
#include <QCryptographicHash>
#include <stdexcept>

#include "merkle.h"

namespace steadyturn {

void makeConsistent(RawShop& shop) {
  const auto must = [&](const std::string& sql) {
    if (!shop.run(sql)) throw std::runtime_error(sql);
  };
  must("BEGIN");
  must("DELETE FROM tree_node");
  GrowingTree tree([&](int level, std::uint64_t position, const Hash& root) {
    if (level % 4 != 0) return;
    must("INSERT INTO tree_node VALUES (" + std::to_string(level) + ", " + std::to_string(position) + ", x'" +
         writeHash(root) + "')");
  });
  const auto entries = shop.column("SELECT seq || ':' || hex(entry) FROM ledger ORDER BY seq");
  for (const auto& entry : entries) {
    const auto colon = entry.find(':');
    const auto bytes = QByteArray::fromHex(QByteArray::fromStdString(entry.substr(colon + 1)));
    const auto leaf = QCryptographicHash::hash(QByteArray(1, '\0') + bytes, QCryptographicHash::Sha256).toHex();
    must("UPDATE ledger SET leaf = x'" + leaf.toStdString() + "' WHERE seq = " + entry.substr(0, colon));
    tree.add(parseHash(leaf.toStdString()).value());
  }
  must("COMMIT");
}

}  // namespace steadyturn
