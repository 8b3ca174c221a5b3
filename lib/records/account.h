// Who may write in a shop: accounts, their roles, and what happened to them.
#pragma once

#include <array>
#include <chrono>
#include <string>
#include <string_view>

#include "problem.h"

namespace steadyturn {

// Lead: the quality lead, who answers for tools, checks and specifications. Technician: who tightens. Auditor: who
// looks and changes nothing.
enum class AccountRole { Lead, Technician, Auditor };
inline constexpr std::array allAccountRoles{AccountRole::Lead, AccountRole::Technician, AccountRole::Auditor};
Result<AccountRole> parseRole(std::string_view typed);
std::string_view writeRole(AccountRole role);  // "lead", "technician", "auditor"

struct Account {
  std::string name;
  AccountRole role = AccountRole::Auditor;
  bool open = true;
  std::string since;  // UTC instant it was added, "2026-03-14T09:26:53.589Z"
};

// CodeMade: the shop got a new recovery code; it belongs to no account.
enum class AccountChange { Added, RoleChanged, PinChanged, Recovered, Closed, CodeMade };
inline constexpr std::array allAccountChanges{AccountChange::Added,      AccountChange::RoleChanged,
                                              AccountChange::PinChanged, AccountChange::Recovered,
                                              AccountChange::Closed,     AccountChange::CodeMade};
Result<AccountChange> parseAccountChange(std::string_view typed);
std::string_view writeAccountChange(AccountChange change);  // "added", "role changed" …

// How long the next try waits after so many wrong ones in a row: the first three are slips of a finger, then 2 s that
// double up to a quarter of an hour. Common practice (NIST SP 800-63B, 5.2.2 asks for a limit and leaves its shape
// open).
std::chrono::seconds waitAfter(int failures);

}  // namespace steadyturn
