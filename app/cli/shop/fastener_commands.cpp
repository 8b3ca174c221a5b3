// `sturn fastener add|list|find|show|revise|approve`.
#include <CLI/CLI.hpp>
#include <array>

#include "column_options.h"
#include "display_text.h"
#include "fastener_text.h"
#include "figures.h"
#include "records_json.h"
#include "shop_commands.h"
#include "text_table.h"

namespace steadyturn {
namespace {

constexpr std::array columnsFastener{
    ColumnOption{"component", "What is tightened", true},
    ColumnOption{"target", "Tightening torque, in the unit", true},
    ColumnOption{"unit", "N.m, cN.m, kgf.m, kgf.cm, lbf.ft, lbf.in, ozf.in", true},
    ColumnOption{"low", "Lowest torque that is good, in the unit"},
    ColumnOption{"high", "Highest torque that is good, in the unit"},
    ColumnOption{"part_limit", "Torque the part must never get, in the unit"},
    ColumnOption{"angle_deg", "Degrees to turn on after the torque"},
    ColumnOption{"assembly", "Where it belongs"},
    ColumnOption{"thread", "Such as M14x1.5"},
    ColumnOption{"property_class", "Such as 8.8"},
    ColumnOption{"part_material", "Of the part; 'plastic' is guarded"},
    ColumnOption{"drive", "What the fastener takes, such as '17 mm hexagon'"},
    ColumnOption{"seal", "Such as 'crush washer'"},
    ColumnOption{"renew", "yes or no: renewed every time"},
    ColumnOption{"lubrication", "Such as 'oil the rubber seal'"},
    ColumnOption{"seat_check", "What to look at before tightening"},
    ColumnOption{"source", "Where the numbers come from"},
    ColumnOption{"revision", "Edition or date of the source"},
    ColumnOption{"stages", "Torques, then angles, in order: '30; 60; 90 deg'"},
    ColumnOption{"sequence", "Order of several screws, such as '1 4 2 5 3 6'"},
    ColumnOption{"limit_basis", "Where the limit comes from, when it is not in the part's own data"},
    ColumnOption{"by", "Who enters it"},
};

std::optional<double> turnedIn(const TighteningStages& stages) {
  double turned = 0;
  for (const auto& stage : stages) turned += stage.angle ? stage.value : 0;
  return turned > 0 ? std::optional(turned) : std::nullopt;
}

// Puts what was typed into `fastener`; an empty text takes a fact away.
Problems apply(const ColumnTexts& texts, Fastener& fastener) {
  TypedValues typed;
  const auto text = [&](const char* name, std::string& into) {
    if (texts.has(name)) into = texts.text(name);
  };
  const auto number = [&](const char* name, std::optional<double>& into) {
    if (texts.has(name)) into = typed.optionalNumber(texts.text(name), name);
  };
  text("component", fastener.component);
  text("assembly", fastener.assembly);
  text("thread", fastener.thread);
  text("property_class", fastener.propertyClass);
  text("part_material", fastener.partMaterial);
  text("drive", fastener.drive);
  text("seal", fastener.seal);
  text("lubrication", fastener.lubrication);
  text("seat_check", fastener.seatCheck);
  text("source", fastener.source);
  text("revision", fastener.revision);
  // A limit typed anew is the part's own unless something else is said.
  if (texts.has("part_limit")) fastener.limitBasis.clear();
  text("sequence", fastener.sequence);
  text("limit_basis", fastener.limitBasis);
  text("by", fastener.enteredBy);
  number("low", fastener.low);
  number("high", fastener.high);
  number("part_limit", fastener.partLimit);
  number("angle_deg", fastener.angleDeg);
  if (texts.has("target")) fastener.target = typed.number(texts.text("target"), "target");
  if (texts.has("unit")) fastener.unit = typed.unit(texts.text("unit"), "unit");
  if (texts.has("stages")) {
    fastener.stages = typed.valueOf(parseStages(texts.text("stages"), "stages"));
    if (!texts.has("angle_deg")) fastener.angleDeg = turnedIn(fastener.stages);
  }
  if (texts.has("renew")) fastener.renew = typed.flag(texts.text("renew"), "renew");
  return typed.problems();
}

Output tellSaved(const Fastener& fastener, const Saved& saved, bool json, const std::string& done) {
  if (!json) return {.text = done + displayText(fastener.id) + '\n', .cautions = saved.warnings};
  OrderedJson document = fastenerJson(fastener);
  document["warnings"] = saved.warnings;
  return {.text = writeDocument(document), .cautions = {}};
}

Result<Output> addFastener(Shop& shop, const std::string& id, const ColumnTexts& texts, bool json) {
  Fastener fastener;
  fastener.id = id;
  if (Problems problems = apply(texts, fastener); !problems.empty()) return tl::unexpected(std::move(problems));
  const auto saved = shop.addFastener(fastener);
  if (!saved) return tl::unexpected(saved.error());
  return tellSaved(fastener, *saved, json, "Added the fastener ");
}

Result<Output> reviseFastener(Shop& shop, const std::string& id, const ColumnTexts& texts, const std::string& reason,
                              bool json) {
  auto fastener = shop.fastener(id);
  if (!fastener) return tl::unexpected(fastener.error());
  fastener->enteredBy.clear();  // of the old revision
  if (Problems problems = apply(texts, *fastener); !problems.empty()) return tl::unexpected(std::move(problems));
  const auto saved = shop.reviseFastener(*fastener, reason);
  if (!saved) return tl::unexpected(saved.error());
  const auto revised = shop.fastener(id);
  if (!revised) return tl::unexpected(revised.error());
  return tellSaved(*revised, *saved, json, "Revised the fastener ");
}

Result<Output> listFastener(const Result<std::vector<Fastener>>& fasteners, bool json) {
  if (!fasteners) return tl::unexpected(fasteners.error());
  OrderedJson all = OrderedJson::array();
  TextTable table({{"fastener"},
                   {"component"},
                   {"assembly"},
                   {"thread"},
                   {"target", Side::Right},
                   {"low", Side::Right},
                   {"high", Side::Right},
                   {"part's limit", Side::Right},
                   {"released"},
                   {"source"}});
  for (const Fastener& one : *fasteners) {
    all.push_back(fastenerJson(one));
    const std::string limit = one.needsPartLimit() ? "plastic: NEEDED" : figure(one.partLimit, 4);
    table.row({one.id, one.component, one.assembly, one.thread, torqueText(one.targetTorque()), figure(one.low, 4),
               figure(one.high, 4), limit, one.released() ? "yes" : "NO",
               one.source.empty() ? "not on record" : one.source});
  }
  if (json) return Output{.text = writeDocument({{"fasteners", std::move(all)}}), .cautions = {}};
  if (table.empty()) return Output{.text = "No fastener found.\n", .cautions = {}};
  return Output{.text = table.text() + '\n' + serviceDataFirst + '\n', .cautions = {}};
}

Result<Output> showFastener(Shop& shop, const std::string& id, bool json) {
  const auto revisions = shop.fastenerRevisions(id);
  if (!revisions) return tl::unexpected(revisions.error());
  const Fastener& newest = revisions->back();
  if (json) return Output{.text = writeDocument(fastenerJson(newest)), .cautions = {}};
  std::string text = fastenerText(newest);
  if (const auto sensible = shop.questionsAbout(newest).sensible) {
    text += "\nSuch a joint on " + newest.thread + " could sensibly take " + torqueText(sensible->low) + " to " +
            torqueText(sensible->high) + " (VDI 2230, friction 0.08 to 0.20; shares of it by common practice).\n";
  }
  if (revisions->size() > 1) {
    text += "\nEarlier revisions:\n";
    for (std::size_t i = 0; i + 1 < revisions->size(); ++i) {
      const Fastener& old = (*revisions)[i];
      text += "  " + std::to_string(old.number) + ": " + torqueText(old.targetTorque()) +
              ", replaced because: " + displayText((*revisions)[i + 1].revisionReason) + '\n';
    }
  }
  return Output{.text = text + '\n' + serviceDataFirst + '\n', .cautions = {}};
}

Result<Output> approve(Shop& shop, const std::string& id, const std::string& by, bool json) {
  const auto approved = shop.approveFastener(id, by);
  if (!approved) return tl::unexpected(approved.error());
  if (json) return Output{.text = writeDocument(fastenerJson(*approved)), .cautions = {}};
  return Output{.text = "Released revision " + std::to_string(approved->number) + " of " + displayText(id) +
                        ", approved by " + displayText(approved->approvedBy) + '\n',
                .cautions = {}};
}

}  // namespace

void addFastenerCommands(Context& context) {
  CLI::App& group =
      *context.addGroup("fastener", "The fasteners: add, list, find, show, revise, approve, limit, synonym");
  const auto id = std::make_shared<std::string>();
  const auto json = std::make_shared<bool>(false);

  CLI::App* add = context.add(group, "add", "Add a fastener",
                              "sturn fastener add B12-drain --component 'drain plug' --target 25 --low 22 --high 28 "
                              "--unit N.m --source 'service manual, page 12'");
  add->add_option("FASTENER", *id, "The shop's own mark for it")->required()->type_name("");
  const auto texts = addColumnOptions(*add, columnsFastener, true);
  add->add_flag("--json", *json, "Print the fastener as JSON");
  context.runs(add, [=](Shop& shop) { return addFastener(shop, *id, *texts, *json); });

  CLI::App* listing = context.add(group, "list", "List the fasteners", "sturn fastener list");
  listing->add_flag("--json", *json, R"(Print {"fasteners": [...]})");
  context.runs(listing, [=](Shop& shop) { return listFastener(shop.fasteners(), *json); });

  const auto words = std::make_shared<std::vector<std::string>>();
  const auto limit = std::make_shared<int>(50);
  CLI::App* find =
      context.add(group, "find", "Find fasteners by the beginnings of words", "sturn fastener find drain plug");
  find->add_option("WORDS", *words, "Words of the component, assembly, thread or mark")->required()->type_name("");
  find->add_option("--limit", *limit, "How many at most (50)")->type_name("")->check(CLI::Range(1, 100'000));
  find->add_flag("--json", *json, R"(Print {"fasteners": [...]}, best first)");
  context.runs(find, [=](Shop& shop) {
    std::string joined;
    for (const std::string& word : *words) joined += (joined.empty() ? "" : " ") + word;
    return listFastener(shop.findFasteners(joined, *limit), *json);
  });

  CLI::App* showing = context.add(group, "show", "Show a fastener's specification", "sturn fastener show B12-drain");
  showing->add_option("FASTENER", *id, "Its mark")->required()->type_name("");
  showing->add_flag("--json", *json, "Print the fastener as JSON");
  context.runs(showing, [=](Shop& shop) { return showFastener(shop, *id, *json); });

  const auto by = std::make_shared<std::string>();
  CLI::App* approving =
      context.add(group, "approve", "Stand for the newest revision as a second person; it is released then",
                  "sturn fastener approve B12-drain --by 'R. Lind'");
  approving->add_option("FASTENER", *id, "Its mark")->required()->type_name("");
  approving->add_option("--by", *by, "Who approves it; not who entered it")->required()->type_name("");
  approving->add_flag("--json", *json, "Print the fastener as JSON");
  context.runs(approving, [=](Shop& shop) { return approve(shop, *id, *by, *json); });

  const auto reason = std::make_shared<std::string>();
  CLI::App* revise = context.add(group, "revise", "Change a specification; the old one stays on record",
                                 "sturn fastener revise B12-drain --target 27 --reason 'maker's bulletin 4'");
  revise->add_option("FASTENER", *id, "Its mark")->required()->type_name("");
  revise->add_option("--reason", *reason, "Why, in a few words")->required()->type_name("");
  const auto changed = addColumnOptions(*revise, columnsFastener, false);
  revise->add_flag("--json", *json, "Print the fastener as JSON");
  context.runs(revise, [=](Shop& shop) { return reviseFastener(shop, *id, *changed, *reason, *json); });
  addLimitCommand(context, group);
  addSynonymCommands(context, group);
}

}  // namespace steadyturn
