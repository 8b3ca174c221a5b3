#include "shop_commands.h"

namespace steadyturn {

void addShopCommands(Context& context) {
  addShopFileCommands(context);
  addToolCommands(context);
  addReferenceCommands(context);
  addCheckCommands(context);
  addDriftCommands(context);
  addFleetCommands(context);
  addFastenerCommands(context);
  addChooseCommand(context);
  addJobCommands(context);
  addServiceCommands(context);
  addRecallCommand(context);
  addTransferCommands(context);
  addReportCommands(context);
  addProofCommands(context);
  addKeyCommands(context);
  addFactsCommands(context);
  addUserCommands(context);
  addRestoreCommand(context);
  addMoveCommand(context);
}

}  // namespace steadyturn
