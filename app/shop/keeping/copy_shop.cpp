#include "copy_shop.h"

#include "inside.h"
#include "shop_address.h"
#include "shop_copy.h"
#include "shop_keeping.h"
#include "shop_proof.h"
#include "verifier.h"

namespace steadyturn {

namespace {

// One that nothing was entered in, as a copying that was cut off leaves it, is as good as none.
Result<Database> emptyShopAt(const std::string& address) {
  auto made = Database::create(address);
  if (made || !isOnServer(address)) return made;
  auto there = Database::open(address);
  if (!there || there->readOnly() || Ledger(*there).size() > 0) return made;
  return there;
}

Result<Checkpoint> proven(const Shop& shop, const std::string& address) {
  const auto copy = Shop::open(address);
  if (!copy) return tl::unexpected(copy.error());
  const auto proof = verifyShop(*copy);
  if (!proof) return tl::unexpected(proof.error());
  auto head = ledgerHead(*copy);
  if (!head) return head;
  const bool same = headOf(shop.inside().database, head->size).root == head->root;
  if (proof->intact() && same) return head;
  return refuse({.kind = ProblemKind::Conflict,
                 .field = "shop",
                 .found = proof->intact() ? "another ledger than the original's" : proof->faults.front().what,
                 .accepted = "a shop that is not damaged: verify it"});
}

}  // namespace

Result<Checkpoint> copyProven(const Shop& shop, const std::string& address, const Progress& progress) {
  auto copy = emptyShopAt(address);
  if (!copy) return tl::unexpected(copy.error());
  try {
    if (!copyShop(shop.inside().database, *copy, progress)) {
      Database::remove(std::move(*copy));
      return refuse({.kind = ProblemKind::Cancelled});
    }
    auto head = proven(shop, address);
    if (!head) Database::remove(std::move(*copy));
    return head;
  } catch (const StoreError&) {
    Database::remove(std::move(*copy));
    throw;
  }
}

Result<Moved> moveShop(const std::string& from, const std::string& to, const Progress& progress) {
  return guarded([&]() -> Result<Moved> {
    const auto shop = Shop::open(from);
    if (!shop) return tl::unexpected(shop.error());
    const auto head = copyProven(*shop, to, progress);
    if (!head) return tl::unexpected(head.error());
    return Moved{.head = *head, .from = shownAddress(from), .to = shownAddress(to)};
  });
}

}  // namespace steadyturn
