#include "guarded_secret.h"

#include <algorithm>
#include <optional>

#include "account.h"
#include "instant.h"
#include "pin.h"

namespace steadyturn {

namespace {

Problem refused(const std::string& account, std::string why) {
  return {.kind = ProblemKind::NotPermitted,
          .field = account.empty() ? "recovery code" : "PIN",
          .found = account,
          .accepted = std::move(why)};
}

// Seconds till the next try; a clock that was put back in between asks for none.
std::chrono::seconds timeToWait(const AccountSecret& secret, const std::string& now) {
  using std::chrono::ceil, std::chrono::seconds;
  const auto failed = readInstant(secret.lastFailure);
  const auto at = readInstant(now);
  if (!failed || !at || *at < *failed) return seconds(0);
  return std::max(seconds(0), ceil<seconds>(*failed + waitAfter(secret.failures) - *at));
}

}  // namespace

Result<void> askSecret(Shop::Inside& shop, const std::string& account, const std::string& typed) {
  // One try at a time, whatever number of programs try at once.
  std::optional<Transaction> turn;
  if (!shop.lookingOnly && !shop.database.readOnly()) turn.emplace(shop.database);
  const auto secret = shop.accounts.secret(account);
  if (!secret) return refuse(refused(account, "the right name and PIN"));
  const auto now = shop.now();
  if (const auto wait = timeToWait(*secret, now); wait.count() > 0) {
    return refuse(refused(account, "after " + std::to_string(secret->failures) + " wrong tries, try again in " +
                                       std::to_string(wait.count()) + " s"));
  }
  const bool fits = opens(secret->hash, typed);
  if (turn && (!fits || secret->failures > 0)) {
    shop.accounts.setFailures(account, fits ? 0 : secret->failures + 1, fits ? "" : now);
    turn->commit();
  }
  if (fits) return {};
  return refuse(refused(account, "the right name and " + std::string(account.empty() ? "code" : "PIN")));
}

}  // namespace steadyturn
