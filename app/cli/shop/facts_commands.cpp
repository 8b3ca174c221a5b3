// `sturn shop show|set`: who the shop is, and its own rules.
#include <CLI/CLI.hpp>

#include "display_text.h"
#include "figures.h"
#include "json_document.h"
#include "shop_commands.h"
#include "text_table.h"
#include "typed_values.h"

namespace steadyturn {
namespace {

struct TypedFacts {
  std::optional<std::string> name, place, country, interval, confidence, rule, risk;
  bool json = false;
};

Result<Output> showFacts(Shop& shop, bool json) {
  const auto facts = shop.facts();
  const auto policy = shop.policy();
  if (json) {
    return Output{.text = writeDocument({{"shop", shop.address()},
                                         {"id", shop.id()},
                                         {"name", facts.name},
                                         {"place", facts.place},
                                         {"country", facts.country},
                                         {"interval_days", policy.intervalDays},
                                         {"confidence", policy.confidence},
                                         {"decision_rule", writeRule(policy.rule)},
                                         {"part_limit_risk", policy.partLimitRisk}}),
                  .cautions = {}};
  }
  return Output{.text = factLines({{"shop", shop.address()},
                                   {"name", facts.name},
                                   {"place", facts.place},
                                   {"country", facts.country},
                                   {"interval", std::to_string(policy.intervalDays) + " days"},
                                   {"confidence", figure(100 * policy.confidence) + " %"},
                                   {"decision rule", std::string(writeRule(policy.rule))},
                                   {"part's limit",
                                    "passed with at most " + figure(100 * policy.partLimitRisk) + " % probability"}}),
                .cautions = {}};
}

Result<Policy> changed(Policy policy, const TypedFacts& typed) {
  TypedValues values;
  if (typed.interval) policy.intervalDays = values.optionalWhole(*typed.interval, "interval-days").value_or(0);
  if (typed.confidence) policy.confidence = values.valueOf(parseNumber(*typed.confidence, "confidence"));
  if (typed.rule) policy.rule = values.valueOf(parseRule(*typed.rule));
  if (typed.risk) policy.partLimitRisk = values.valueOf(parseNumber(*typed.risk, "part-limit-risk"));
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  return policy;
}

Result<Output> set(Shop& shop, const TypedFacts& typed) {
  auto facts = shop.facts();
  facts.name = typed.name.value_or(facts.name);
  facts.place = typed.place.value_or(facts.place);
  facts.country = typed.country.value_or(facts.country);
  const auto policy = changed(shop.policy(), typed);
  if (!policy) return tl::unexpected(policy.error());
  if (auto done = shop.change(facts, *policy); !done) return tl::unexpected(done.error());
  return showFacts(shop, typed.json);
}

}  // namespace

void addFactsCommands(Context& context) {
  context.addGroup("shop", "The shop itself: show, set its name and rules");
  CLI::App& group = *context.app().get_subcommand("shop");
  group.footer(
      "The shop: --shop SHOP, or STURN_SHOP in the environment.\nExample: sturn shop set --place \"hall 2\"");
  const auto typed = std::make_shared<TypedFacts>();
  CLI::App* showing = context.add(group, "show", "Show the shop's name and rules", "sturn shop show");
  showing->add_flag("--json", typed->json, "Print one object");
  context.runs(showing, [=](Shop& shop) { return showFacts(shop, typed->json); });

  CLI::App* setting = context.add(group, "set", "Change the shop's name or rules; what is not named stays",
                                  "sturn shop set --interval-days 180 --rule guarded");
  setting->add_option("--name", typed->name, "The shop's name, as certificates carry it")->type_name("");
  setting->add_option("--place", typed->place, "Where the bench stands")->type_name("");
  setting->add_option("--country", typed->country, "Two capital letters (ISO 3166-1)")->type_name("");
  setting->add_option("--interval-days", typed->interval, "Days between checks where a tool has none of its own")
      ->type_name("");
  setting->add_option("--confidence", typed->confidence, "Of prediction intervals (0.95)")->type_name("");
  setting->add_option("--rule", typed->rule, "Decision rule: simple or guarded (ILAC-G8)")->type_name("");
  setting->add_option("--part-limit-risk", typed->risk, "Probability with which a part's limit may be passed (0.001)")
      ->type_name("");
  setting->add_flag("--json", typed->json, "Print one object");
  context.runs(setting, [=](Shop& shop) { return set(shop, *typed); });
}

}  // namespace steadyturn
