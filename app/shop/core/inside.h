// The parts a Shop works with: one connection, its tables, and who is acting. For the sources of this folder alone.
#pragma once

#include <functional>
#include <optional>
#include <string>

#include "account_table.h"
#include "approval_table.h"
#include "bench_setup_table.h"
#include "check_table.h"
#include "draft_table.h"
#include "fastener_table.h"
#include "fleet_shelf.h"
#include "issue_table.h"
#include "job_table.h"
#include "permission.h"
#include "recall_table.h"
#include "reference_table.h"
#include "shop.h"
#include "shop_table.h"
#include "signing_table.h"
#include "tightening_table.h"
#include "tool_table.h"

namespace steadyturn {

struct Shop::Inside {
  explicit Inside(Database opened);

  Database database;
  Ledger ledger;
  ShopTable facts;
  ToolTable tools;
  ReferenceTable references;
  FastenerTable fasteners;
  ApprovalTable approvals;
  CheckTable checks;
  TighteningTable tightenings;
  JobTable jobs;
  RecallTable recalls;
  BenchSetupTable bench;
  DraftTable drafts;
  mutable FleetShelf fleets;
  SigningTable signing;
  IssueTable issued;
  AccountTable accounts;
  std::string who;           // the account that is signed in; empty: nobody
  bool lookingOnly = false;  // opened to be looked at: nothing is written, whoever asks
  // The instant that stamps a ledger entry, "2026-03-14T09:26:53.589Z". The clock's; the demo depot tells its own
  // time.
  std::function<std::string()> now;

  // Why the account that is signed in may not do it; nothing where it may. In a shop without accounts everybody may.
  std::optional<Problem> refusal(Act act) const;
  // Who did what is recorded: the account that is signed in, or in a shop without accounts whom the person names.
  const std::string& doer(const std::string& typed) const { return who.empty() ? typed : who; }
  Date today() const;
  Policy policy() const;
  // The shop's fleets by what was known on a day. Valid until the next call.
  const FleetBook& fleetBook(Date asOf) const { return fleets.book(asOf, policy().confidence); }
};

// Runs `action` and turns trouble of the database engine into a problem. Every public function of Shop goes through
// it.
template <typename Action>
auto guarded(Action&& action) -> decltype(action()) {
  try {
    return action();
  } catch (const StoreError& error) {
    return refuse(error.problem());
  }
}

}  // namespace steadyturn
