// `sturn fastener limit`: a limit for a thread in plastic, proposed from published practice.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "json_document.h"
#include "shop_commands.h"
#include "shop_limit.h"
#include "typed_values.h"
#include "value_json.h"

namespace steadyturn {
namespace {

struct TypedTrial {
  std::string fastener, driving, stripping, unit = "N.m", by;
  bool record = false, json = false;
};

Result<LimitProposal> proposalFrom(const TypedTrial& typed, const Fastener& fastener) {
  TypedValues values;
  const bool stripped = !typed.stripping.empty();
  const StatedTorque trial{
      .value = values.number(stripped ? typed.stripping : typed.driving, stripped ? "stripping" : "driving"),
      .unit = values.unit(typed.unit, "unit")};
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  return proposeLimit(fastener, stripped ? TrialKind::Stripping : TrialKind::Driving, trial);
}

Result<Output> propose(Shop& shop, const TypedTrial& typed) {
  auto fastener = shop.fastener(typed.fastener);
  if (!fastener) return tl::unexpected(fastener.error());
  const auto proposal = proposalFrom(typed, *fastener);
  if (!proposal) return tl::unexpected(proposal.error());
  if (typed.record) {
    takeOver(*fastener, *proposal);
    fastener->enteredBy = typed.by;
    if (const auto saved = shop.reviseFastener(*fastener, std::string(limitByTrialReason)); !saved) {
      return tl::unexpected(saved.error());
    }
  }
  if (typed.json) {
    return Output{.text = writeDocument({{"fastener", fastener->id},
                                         {"part_limit", torqueJson(proposal->limit)},
                                         {"basis", proposal->basis},
                                         {"recorded", typed.record}}),
                  .cautions = {}};
  }
  return Output{.text = "Part's limit for " + displayText(fastener->id) + ": " + torqueText(proposal->limit) + '\n' +
                        displayText(proposal->basis) + '\n' + std::string(limitIsAProposal) + '\n' +
                        (typed.record ? "It is on record as a new revision, which waits for approval.\n"
                                      : "Nothing was written; --record puts it on record as a new revision.\n"),
                .cautions = {}};
}

}  // namespace

void addLimitCommand(Context& context, CLI::App& fasteners) {
  const auto typed = std::make_shared<TypedTrial>();
  CLI::App* command = context.add(fasteners, "limit", "Propose a part's limit for a screw in plastic from a trial",
                                  "sturn fastener limit VB-07 --stripping 14 --unit N.m");
  command->add_option("FASTENER", typed->fastener, "Its mark")->required()->type_name("");
  CLI::Option* driving =
      command->add_option("--driving", typed->driving, "Torque that drove the screw in, by trial")->type_name("");
  CLI::Option* stripping =
      command->add_option("--stripping", typed->stripping, "Torque that stripped the thread, by trial")
          ->type_name("");
  driving->excludes(stripping);
  command->add_option("--unit", typed->unit, "Of the trial's torque (N.m)")->type_name("");
  command->add_flag("--record", typed->record, "Put it on record as a new revision");
  command->add_option("--by", typed->by, "Who enters it")->type_name("");
  command->add_flag("--json", typed->json, R"(Print {"fastener", "part_limit", "basis", "recorded"})");
  context.runs(command, [=](Shop& shop) { return propose(shop, *typed); });
}

}  // namespace steadyturn
