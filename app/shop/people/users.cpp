#include <algorithm>

#include "guarded_secret.h"
#include "pin.h"
#include "same_person.h"
#include "shop_people.h"
#include "validate.h"
#include "writing.h"

namespace steadyturn {

namespace {

// Whom a typed name means, whatever its capitals.
std::optional<Account> accountOf(const Shop::Inside& shop, const std::string& typed) {
  for (auto& account : shop.accounts.all()) {
    if (samePerson(account.name, typed)) return std::move(account);
  }
  return std::nullopt;
}

Result<Account> openAccount(const Shop::Inside& shop, const std::string& typed) {
  auto account = accountOf(shop, typed);
  if (!account || !account->open) {
    return refuse({.kind = ProblemKind::NotFound,
                   .field = "user",
                   .found = typed,
                   .accepted = "somebody with an open account in this shop; list them"});
  }
  return std::move(*account);
}

// A shop that nobody may lead would be shut for good.
std::optional<Problem> lastLead(const Shop::Inside& shop, const Account& account) {
  const auto all = shop.accounts.all();
  const auto leads =
      std::ranges::count_if(all, [](const Account& a) { return a.open && a.role == AccountRole::Lead; });
  if (account.role != AccountRole::Lead || leads > 1) return std::nullopt;
  return Problem{.kind = ProblemKind::Conflict,
                 .field = "user",
                 .found = account.name + " is the only lead",
                 .accepted = "a shop with a lead: make somebody else one first"};
}

std::string keepNewCode(Writing& writing, Shop::Inside& shop) {
  auto code = freshRecoveryCode();
  shop.accounts.add({.account = {}, .change = AccountChange::CodeMade, .secretHash = hashOfPin(code)},
                    writing.stamp());
  return code;
}

Problems problemsOfNewcomer(const std::string& name, const std::string& pin) {
  Problems problems;
  checkId(problems, "user", name);
  if (!name.empty() && (sameNameForm(name).empty() || name.find_first_of("\n\t") != std::string::npos)) {
    problems.push_back({.field = "user", .found = name, .accepted = "a name on one line"});
  }
  for (auto& problem : problemsOfPin(pin)) problems.push_back(std::move(problem));
  return problems;
}

}  // namespace

Result<std::vector<Account>> users(const Shop& shop) {
  return guarded([&]() -> Result<std::vector<Account>> { return shop.inside().accounts.all(); });
}

bool hasUsers(const Shop& shop) {
  const auto any = guarded([&]() -> Result<bool> { return shop.inside().accounts.any(); });
  return !any || *any;  // a shop that can't be asked is no open one
}

Result<UserAdded> addUser(Shop& face, const std::string& name, AccountRole role, const std::string& pin) {
  if (auto problems = problemsOfNewcomer(name, pin); !problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<UserAdded> {
    auto& shop = face.inside();
    const auto hash = hashOfPin(pin);
    Writing writing(shop, Act::ManageUsers);
    const bool first = !shop.accounts.any();
    if (first && role != AccountRole::Lead) {
      return refuse({.field = "role",
                     .found = std::string(writeRole(role)),
                     .accepted = "lead: a shop's first account is its lead's"});
    }
    if (const auto known = accountOf(shop, name)) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "user",
                     .found = known->name + (known->open ? "" : ", whose account is closed"),
                     .accepted = "a name that nobody in this shop has had yet"});
    }
    shop.accounts.add({.account = name, .change = AccountChange::Added, .role = role, .secretHash = hash},
                      writing.stamp());
    UserAdded added;
    if (first) added.recoveryCode = keepNewCode(writing, shop);
    writing.commit();
    if (role == AccountRole::Lead && pin.size() < 8) {
      added.warnings.emplace_back("A lead's PIN opens everything: a passphrase of some words is better.");
    }
    return added;
  });
}

Result<void> changeRole(Shop& face, const std::string& name, AccountRole role) {
  return guarded([&]() -> Result<void> {
    auto& shop = face.inside();
    Writing writing(shop, Act::ManageUsers);
    const auto account = openAccount(shop, name);
    if (!account) return tl::unexpected(account.error());
    if (account->role == role) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "role",
                     .found = account->name + " has the role " + std::string(writeRole(role)),
                     .accepted = "another one"});
    }
    if (auto last = lastLead(shop, *account)) return refuse(std::move(*last));
    shop.accounts.add({.account = account->name, .change = AccountChange::RoleChanged, .role = role},
                      writing.stamp());
    writing.commit();
    return {};
  });
}

Result<void> closeUser(Shop& face, const std::string& name) {
  return guarded([&]() -> Result<void> {
    auto& shop = face.inside();
    Writing writing(shop, Act::ManageUsers);
    const auto account = openAccount(shop, name);
    if (!account) return tl::unexpected(account.error());
    if (auto last = lastLead(shop, *account)) return refuse(std::move(*last));
    shop.accounts.add({.account = account->name, .change = AccountChange::Closed}, writing.stamp());
    writing.commit();
    return {};
  });
}

Result<void> changePin(Shop& face, const std::string& name, const std::string& pin) {
  if (auto problems = problemsOfPin(pin); !problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<void> {
    auto& shop = face.inside();
    const auto hash = hashOfPin(pin);
    Writing writing(shop, samePerson(name, shop.who) ? Act::ChangeOwnPin : Act::ManageUsers);
    const auto account = openAccount(shop, name);
    if (!account) return tl::unexpected(account.error());
    shop.accounts.add({.account = account->name, .change = AccountChange::PinChanged, .secretHash = hash},
                      writing.stamp());
    writing.commit();
    return {};
  });
}

Result<std::string> recoverLead(Shop& face, const std::string& name, const std::string& code,
                                const std::string& pin) {
  if (auto problems = problemsOfPin(pin); !problems.empty()) return tl::unexpected(problems);
  return guarded([&]() -> Result<std::string> {
    auto& shop = face.inside();
    const auto account = openAccount(shop, name);
    if (!account) return tl::unexpected(account.error());
    if (account->role != AccountRole::Lead) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "user",
                     .found = account->name + " is no lead",
                     .accepted = "a lead; a lead gives anybody else a new PIN"});
    }
    if (auto fits = askSecret(shop, {}, readRecoveryCode(code)); !fits) return tl::unexpected(fits.error());
    // Whoever holds the code acts for the account from here on.
    shop.who = account->name;
    const auto hash = hashOfPin(pin);
    Writing writing(shop, Act::ManageUsers);
    shop.accounts.add({.account = account->name, .change = AccountChange::Recovered, .secretHash = hash},
                      writing.stamp());
    auto next = keepNewCode(writing, shop);
    writing.commit();
    return next;
  });
}

Result<std::string> makeRecoveryCode(Shop& face) {
  return guarded([&]() -> Result<std::string> {
    auto& shop = face.inside();
    Writing writing(shop, Act::ManageUsers);
    if (!shop.accounts.any()) {
      return refuse({.kind = ProblemKind::Conflict,
                     .field = "shop",
                     .found = "a shop without accounts",
                     .accepted = "a shop with a lead: add the first one"});
    }
    auto code = keepNewCode(writing, shop);
    writing.commit();
    return code;
  });
}

Result<Account> signIn(Shop& face, const std::string& name, const std::string& pin) {
  return guarded([&]() -> Result<Account> {
    auto& shop = face.inside();
    const auto account = accountOf(shop, name);
    if (!account || !account->open) {
      return refuse({.kind = ProblemKind::NotPermitted,
                     .field = "user",
                     .found = name,
                     .accepted = "somebody with an open account in this shop"});
    }
    if (auto fits = askSecret(shop, account->name, pin); !fits) return tl::unexpected(fits.error());
    shop.who = account->name;
    return *account;
  });
}

void signOut(Shop& shop) { shop.inside().who.clear(); }

std::optional<Account> signedIn(const Shop& shop) {
  auto account = guarded([&]() -> Result<Account> {
    if (auto known = shop.inside().accounts.find(shop.inside().who); known && known->open) return std::move(*known);
    return refuse({.kind = ProblemKind::NotFound});
  });
  return account ? std::optional(std::move(*account)) : std::nullopt;
}

Result<void> may(const Shop& shop, Act act) {
  return guarded([&]() -> Result<void> {
    if (auto refused = shop.inside().refusal(act)) return refuse(std::move(*refused));
    return {};
  });
}

}  // namespace steadyturn
