// Which role may do what: the one table of it, for the window and the command line alike. Reading, charts, exports,
// proofs and backups are open to everybody who has the file and are no acts.
#pragma once

#include <array>
#include <string>
#include <string_view>

#include "account.h"

namespace steadyturn {

// What changes a shop. Every function of the application layer that writes names its act (core/writing.h).
enum class Act {
  ManageUsers,
  ChangeOwnPin,
  ChangeShop,
  AddTool,
  HoldTool,
  ReleaseTool,
  RetireTool,
  GroupTool,
  AddReference,
  RecordCheck,
  CorrectCheck,
  RecordSetup,
  EnterFastener,
  ApproveFastener,
  ChangeSynonyms,
  SetService,
  WorkJob,
  RecordTightening,
  Import,
  RestoreShop,
  ChangeKeys,
  SignLedger,
  IssuePaper,
  DecideRecall
};
inline constexpr std::array allActs{
    Act::ManageUsers,  Act::ChangeOwnPin, Act::ChangeShop,       Act::AddTool,         Act::HoldTool,
    Act::ReleaseTool,  Act::RetireTool,   Act::GroupTool,        Act::AddReference,    Act::RecordCheck,
    Act::CorrectCheck, Act::RecordSetup,  Act::EnterFastener,    Act::ApproveFastener, Act::ChangeSynonyms,
    Act::SetService,   Act::WorkJob,      Act::RecordTightening, Act::Import,          Act::RestoreShop,
    Act::ChangeKeys,   Act::SignLedger,   Act::IssuePaper,       Act::DecideRecall};

std::string_view describe(Act act);  // "adding a tool"
bool permits(AccountRole role, Act act);
std::string whoMay(Act act);  // "a lead or a technician"

}  // namespace steadyturn
