// `sturn move`: a shop goes from a file to a server, or back.
#include <CLI/CLI.hpp>
#include <memory>

#include "display_text.h"
#include "json_document.h"
#include "progress_line.h"
#include "shop_commands.h"
#include "shop_keeping.h"
#include "with_shop.h"

namespace steadyturn {
namespace {

struct TypedMove {
  std::string from, to;
  bool json = false;
};

Result<Output> moveTheShop(const TypedMove& typed) {
  ProgressLine line("move");
  const auto moved = moveShop(typed.from, typed.to, line.progress());
  if (!moved) return tl::unexpected(moved.error());
  const auto head = writeCheckpoint(moved->head);
  if (typed.json) {
    return Output{
        .text = writeDocument(
            {{"from", moved->from}, {"to", moved->to}, {"entries", moved->head.size}, {"checkpoint", head}}),
        .cautions = {}};
  }
  const auto from = displayText(moved->from);
  const auto to = displayText(moved->to);
  return Output{.text = "Moved the shop to " + to + " and proved every record of it: its ledger is the one of " +
                        from + ".\nCheckpoint: " + head + "\nPut " + from +
                        " away, so that nobody goes on working in it.\n",
                .cautions = {}};
}

}  // namespace

void addMoveCommand(Context& context) {
  const auto typed = std::make_shared<TypedMove>();
  CLI::App* command = context.add(context.app(), "move", "Carry a shop from a file to a server's database, or back",
                                  "sturn move depot.db postgresql://server/depot");
  command->add_option("FROM", typed->from, "The shop as it is")->required()->type_name("");
  command->add_option("TO", typed->to, "A file that does not exist yet, or a database without a shop in it")
      ->required()
      ->type_name("");
  command->add_flag("--json", typed->json, R"(Print {"from", "to", "entries", "checkpoint"})");
  command->final_callback(
      [&context, typed] { context.choose([typed] { return withQt([&] { return moveTheShop(*typed); }); }); });
}

}  // namespace steadyturn
