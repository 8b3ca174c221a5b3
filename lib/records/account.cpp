#include "account.h"

#include <algorithm>

namespace steadyturn {

namespace {

constexpr std::array roleNames{"lead", "technician", "auditor"};
constexpr std::array changeNames{"added", "role changed", "PIN changed", "recovered", "closed", "recovery code made"};

}  // namespace

std::string_view writeRole(AccountRole role) { return roleNames[static_cast<std::size_t>(role)]; }

Result<AccountRole> parseRole(std::string_view typed) {
  for (const AccountRole role : allAccountRoles) {
    if (writeRole(role) == typed) return role;
  }
  return refuse({.field = "role", .found = std::string(typed), .accepted = "lead, technician or auditor"});
}

std::string_view writeAccountChange(AccountChange change) { return changeNames[static_cast<std::size_t>(change)]; }

Result<AccountChange> parseAccountChange(std::string_view typed) {
  for (const AccountChange change : allAccountChanges) {
    if (writeAccountChange(change) == typed) return change;
  }
  return refuse({.field = "change", .found = std::string(typed), .accepted = "what happens to accounts"});
}

std::chrono::seconds waitAfter(int failures) {
  constexpr int slips = 3;
  constexpr int longest = 900;
  if (failures < slips) return std::chrono::seconds(0);
  return std::chrono::seconds(std::min(longest, 1 << std::min(failures - slips + 1, 20)));
}

}  // namespace steadyturn
