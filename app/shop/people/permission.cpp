#include "permission.h"

namespace steadyturn {

namespace {

// An auditor writes nothing, and so stands in no line.
enum class By { Lead, LeadOrTechnician };

struct Rule {
  By by;
  std::string_view what;
};

constexpr Rule ruleOf(Act act) {
  switch (act) {
    case Act::ManageUsers:
      return {By::Lead, "changing accounts"};
    case Act::ChangeOwnPin:
      return {By::LeadOrTechnician, "changing one's own PIN"};
    case Act::ChangeShop:
      return {By::Lead, "changing the shop's name or rules"};
    case Act::AddTool:
      return {By::Lead, "adding a tool"};
    case Act::HoldTool:  // whoever drops a wrench takes it out of use
      return {By::LeadOrTechnician, "holding a tool"};
    case Act::ReleaseTool:
      return {By::Lead, "releasing a tool"};
    case Act::RetireTool:
      return {By::Lead, "retiring a tool"};
    case Act::GroupTool:
      return {By::Lead, "saying which tools are alike"};
    case Act::AddReference:
      return {By::Lead, "adding a reference standard or its range"};
    case Act::RecordCheck:
      return {By::Lead, "recording a check"};
    case Act::CorrectCheck:
      return {By::Lead, "correcting a check"};
    case Act::RecordSetup:
      return {By::Lead, "recording a bench set-up"};
    case Act::EnterFastener:
      return {By::Lead, "entering or revising a fastener"};
    case Act::ApproveFastener:
      return {By::Lead, "approving a fastener"};
    case Act::ChangeSynonyms:
      return {By::Lead, "changing synonyms"};
    case Act::SetService:
      return {By::Lead, "setting a service's list"};
    case Act::WorkJob:
      return {By::LeadOrTechnician, "opening or closing a job"};
    case Act::RecordTightening:
      return {By::LeadOrTechnician, "recording a tightening"};
    case Act::Import:
      return {By::Lead, "importing a file"};
    case Act::RestoreShop:
      return {By::Lead, "putting a backup in the shop's place"};
    case Act::ChangeKeys:
      return {By::Lead, "changing the signing key"};
    case Act::SignLedger:
      return {By::Lead, "signing the ledger's head"};
    case Act::IssuePaper:  // an auditor's copies are no papers of the shop's
      return {By::LeadOrTechnician, "entering a paper in the ledger"};
    case Act::DecideRecall:
      return {By::Lead, "deciding about jobs in doubt"};
  }
  return {By::Lead, "changing the shop"};
}

}  // namespace

std::string_view describe(Act act) { return ruleOf(act).what; }

bool permits(AccountRole role, Act act) {
  switch (role) {
    case AccountRole::Lead:
      return true;
    case AccountRole::Technician:
      return ruleOf(act).by == By::LeadOrTechnician;
    case AccountRole::Auditor:
      return false;
  }
  return false;
}

std::string whoMay(Act act) { return ruleOf(act).by == By::Lead ? "a lead" : "a lead or a technician"; }

}  // namespace steadyturn
