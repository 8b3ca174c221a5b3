// The people of a shop: who may write in it, and who is doing so. A shop without accounts is open to whoever has the
// file; its first account, a lead's, closes it: from then on every change is asked of permission.h for the account
// that is signed in. Reading stays open.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "account.h"
#include "permission.h"
#include "shop.h"

namespace steadyturn {

Result<std::vector<Account>> users(const Shop& shop);  // in the order they were added, closed ones among them
bool hasUsers(const Shop& shop);

struct UserAdded {
  std::string recoveryCode;  // of the shop, with its first account alone: shown once and kept nowhere
  std::vector<std::string> warnings;
};
// Names are unique for ever, whatever their capitals and spaces. A PIN or passphrase has 4 to 200 characters.
Result<UserAdded> addUser(Shop& shop, const std::string& name, AccountRole role, const std::string& pin);
// A shop keeps at least one open lead (Conflict).
Result<void> changeRole(Shop& shop, const std::string& name, AccountRole role);
Result<void> closeUser(Shop& shop, const std::string& name);
// Six digits nobody chose, for somebody who changes them.
std::string freshPin();
// One's own, or as a lead somebody's.
Result<void> changePin(Shop& shop, const std::string& name, const std::string& pin);

// The way back for a lead who forgot: the shop's recovery code sets a new PIN and is spent by it; the ledger tells of
// it. Returns the next code. Wrong codes wait as wrong PINs do.
Result<std::string> recoverLead(Shop& shop, const std::string& name, const std::string& code, const std::string& pin);
// A new code takes the old one's place.
Result<std::string> makeRecoveryCode(Shop& shop);

// NotPermitted for an unknown or closed account and for a wrong PIN; after three wrong ones in a row also for a right
// one, till the wait is over (waitAfter). Failures are kept in the shop, so that another program does not help.
Result<Account> signIn(Shop& shop, const std::string& name, const std::string& pin);
void signOut(Shop& shop);
std::optional<Account> signedIn(const Shop& shop);

// Whether the account that is signed in may do it now; the problem says why not.
Result<void> may(const Shop& shop, Act act);

}  // namespace steadyturn
