#include "writing.h"

namespace steadyturn {

namespace {

Shop::Inside& notOnlyLookedAt(Shop::Inside& shop, Act act) {
  if (shop.lookingOnly) throw StoreError(*shop.refusal(act));  // before the engine is asked to write
  return shop;
}

}  // namespace

Writing::Writing(Shop::Inside& shop, Act act) : shop_(notOnlyLookedAt(shop, act)), transaction_(shop.database) {
  if (!shop.database.isWhereItWas()) {
    throw StoreError({.kind = ProblemKind::Unavailable,
                      .field = "shop",
                      .found = shop.database.address(),
                      .accepted =
                          "the shop's file under its name; it was moved, replaced or deleted meanwhile: put it "
                          "back, or open it again where it is"});
  }
  if (auto refused = shop.refusal(act)) throw StoreError(std::move(*refused));
}

std::optional<Problem> Shop::Inside::refusal(Act act) const {
  const auto because = [&](std::string why) {
    return Problem{
        .kind = ProblemKind::NotPermitted, .found = std::string(describe(act)), .accepted = std::move(why)};
  };
  if (lookingOnly) return because("the shop was opened to be looked at alone, as an auditor does");
  if (!accounts.any()) return std::nullopt;
  if (who.empty()) return because("this shop has accounts: sign in first (on the command line with --as NAME)");
  const auto account = accounts.find(who);
  if (!account || !account->open) return because("the account " + who + " is closed");
  if (permits(account->role, act)) return std::nullopt;
  return because(whoMay(act) + " may; " + who + " is " + (account->role == AccountRole::Auditor ? "an " : "a ") +
                 std::string(writeRole(account->role)));
}

}  // namespace steadyturn
