// The commands on a shop database.
#pragma once

#include "context.h"

namespace steadyturn {

// Adds them all; `context` must outlive parsing and running.
void addShopCommands(Context& context);

void addShopFileCommands(Context& context);  // init, demo
void addToolCommands(Context& context);
void addReferenceCommands(Context& context);
void addCheckCommands(Context& context);
void addDriftCommands(Context& context);  // drift, due
void addGroupCommand(Context& context, CLI::App& tools);
void addFleetCommands(Context& context);  // backtest, interval
void addFastenerCommands(Context& context);
void addLimitCommand(Context& context, CLI::App& fasteners);
void addSynonymCommands(Context& context, CLI::App& fasteners);
void addChooseCommand(Context& context);
void addJobCommands(Context& context);
void addServiceCommands(Context& context);
void addRecallCommand(Context& context);
void addTransferCommands(Context& context);  // import, export
void addReportCommands(Context& context);
void addRegisterReports(Context& context, CLI::App& group);  // report due, register, labels
void addProofCommands(Context& context);                     // verify, backup, ledger
void addKeyCommands(Context& context);                       // key
void addLedgerClose(Context& context, CLI::App& ledger);     // ledger close
void addFactsCommands(Context& context);                     // shop show, shop set
void addUserCommands(Context& context);
void addRestoreCommand(Context& context);
void addMoveCommand(Context& context);

}  // namespace steadyturn
