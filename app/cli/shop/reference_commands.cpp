// `sturn reference add|read|list|show`.
#include <CLI/CLI.hpp>
#include <QFile>
#include <array>

#include "column_options.h"
#include "dcc_reader.h"
#include "display_text.h"
#include "figures.h"
#include "records_json.h"
#include "shop_commands.h"
#include "shop_people.h"
#include "text_table.h"

namespace steadyturn {
namespace {

constexpr std::array columnsReference{
    ColumnOption{"expanded_uncertainty_percent", "Relative expanded uncertainty, %", true},
    ColumnOption{"coverage_factor", "Its coverage factor k; else 2"},
    ColumnOption{"error_percent", "The standard's own known error, %; else 0"},
    ColumnOption{"description", "What it is"},
    ColumnOption{"serial", "Its serial number"},
    ColumnOption{"certificate", "Number of its calibration certificate"},
    ColumnOption{"calibrated", "Day of its calibration, such as 2026-03-14"},
    ColumnOption{"due", "Day by which it is calibrated again"},
};

Result<Output> addReference(Shop& shop, const std::string& id, const ColumnTexts& texts, bool json) {
  TypedValues typed;
  const auto number = [&](const char* name) { return typed.optionalNumber(texts.text(name), name); };
  const Reference reference{.id = id,
                            .description = texts.text("description"),
                            .serial = texts.text("serial"),
                            .certificate = texts.text("certificate"),
                            .calibrated = typed.optionalDate(texts.text("calibrated"), "calibrated"),
                            .due = typed.optionalDate(texts.text("due"), "due"),
                            .expandedUncertaintyPercent = typed.number(texts.text("expanded_uncertainty_percent"),
                                                                       "expanded_uncertainty_percent"),
                            .coverageFactor = number("coverage_factor"),
                            .errorPercent = number("error_percent")};
  if (!typed.problems().empty()) return tl::unexpected(typed.problems());
  if (auto added = shop.addReference(reference); !added) return tl::unexpected(added.error());
  return Output{.text = json ? writeDocument(referenceJson(reference))
                             : "Added the reference standard " + displayText(id) + '\n',
                .cautions = {}};
}

Result<Output> listReferences(Shop& shop, bool json) {
  const auto references = shop.references();
  if (!references) return tl::unexpected(references.error());
  OrderedJson list = OrderedJson::array();
  TextTable table({{"reference"},
                   {"U, %", Side::Right},
                   {"k", Side::Right},
                   {"error, %", Side::Right},
                   {"calibrated"},
                   {"due"},
                   {"certificate"},
                   {"description"}});
  for (const Reference& one : *references) {
    list.push_back(referenceJson(one));
    const ReferenceUncertainty uncertainty = one.uncertainty();
    table.row({one.id, figure(uncertainty.expandedPercent), figure(uncertainty.coverageFactor),
               figure(uncertainty.errorPercent), dateFigure(one.calibrated), dateFigure(one.due), one.certificate,
               one.description});
  }
  return Output{.text = json ? writeDocument({{"references", std::move(list)}}) : table.text(), .cautions = {}};
}

Result<Output> showReference(Shop& shop, const std::string& id, bool json) {
  const auto found = shop.reference(id);
  if (!found) return tl::unexpected(found.error());
  if (json) return Output{.text = writeDocument(referenceJson(*found)), .cautions = {}};
  const ReferenceUncertainty uncertainty = found->uncertainty();
  return Output{.text = factLines({{"reference", found->id},
                                   {"description", found->description},
                                   {"serial", found->serial},
                                   {"certificate", found->certificate},
                                   {"calibrated", dateFigure(found->calibrated)},
                                   {"due", dateFigure(found->due)},
                                   {"expanded uncertainty", figure(uncertainty.expandedPercent) + " % (k = " +
                                                                figure(uncertainty.coverageFactor) + ")"},
                                   {"known error", figure(uncertainty.errorPercent) + " %"}}),
                .cautions = {}};
}

Result<ReferenceCertificate> certificateIn(const std::string& path) {
  QFile file(QString::fromStdString(path));
  if (!file.open(QIODevice::ReadOnly)) {
    return refuse({.kind = ProblemKind::FileMissing,
                   .field = "certificate",
                   .found = path,
                   .accepted = "a file that can be read"});
  }
  return readDcc(file);
}

Result<Output> readReference(Shop& shop, const std::string& id, const std::string& path, const std::string& dueTyped,
                             bool json) {
  if (auto allowed = may(shop, Act::AddReference); !allowed) return tl::unexpected(allowed.error());
  TypedValues typed;
  const auto due = typed.optionalDate(dueTyped, "due");
  if (!typed.problems().empty()) return tl::unexpected(typed.problems());
  const auto certificate = certificateIn(path);
  if (!certificate) return tl::unexpected(certificate.error());
  const Reference reference{.id = id,
                            .description = certificate->description,
                            .serial = certificate->serial,
                            .certificate = certificate->number,
                            .calibrated = certificate->calibrated,
                            .due = due,
                            .expandedUncertaintyPercent = certificate->expandedUncertaintyPercent,
                            .coverageFactor = certificate->coverageFactor,
                            .errorPercent = certificate->errorPercent};
  if (auto added = shop.addReference(reference); !added) return tl::unexpected(added.error());
  std::string covers;
  if (certificate->low && certificate->high && certificate->low->value < certificate->high->value) {
    const ReferenceRange range{.low = certificate->low->value, .high = certificate->high->value};
    if (auto set = shop.setReferenceRange(id, range); !set) return tl::unexpected(set.error());
    covers = ", " + figure(range.low) + " to " + figure(range.high) + " N.m";
  }
  if (json) return Output{.text = writeDocument(referenceJson(reference)), .cautions = {}};
  return Output{
      .text = "Added the reference standard " + displayText(id) + " from certificate " +
              displayText(certificate->number) + " of " + displayText(certificate->laboratory) + ": U = " +
              figure(certificate->expandedUncertaintyPercent) + " % (k = " + figure(certificate->coverageFactor) +
              "), the largest of " + std::to_string(certificate->values) + " stated; largest error " +
              signedFigure(certificate->errorPercent) + " %" + covers + "\n",
      .cautions = due ? std::vector<std::string>{}
                      : std::vector<std::string>{"No day is set by which it is calibrated again: a certificate "
                                                 "does not state one. Give it with --due."}};
}

}  // namespace

void addReferenceCommands(Context& context) {
  CLI::App& group = *context.addGroup("reference", "The reference standards: add, read, list, show");
  const auto id = std::make_shared<std::string>();
  const auto json = std::make_shared<bool>(false);

  CLI::App* add = context.add(group, "add", "Add a reference standard",
                              "sturn reference add REF-1 --expanded-uncertainty-percent 0.4 --calibrated 2026-03-14");
  add->add_option("REFERENCE", *id, "The shop's own mark on the standard")->required()->type_name("");
  const auto texts = addColumnOptions(*add, columnsReference, true);
  add->add_flag("--json", *json, "Print the standard as JSON");
  context.runs(add, [=](Shop& shop) { return addReference(shop, *id, *texts, *json); });

  CLI::App* read = context.add(group, "read", "Add a reference standard from its Digital Calibration Certificate",
                               "sturn reference read REF-1 certificate.xml --due 2027-03-14");
  const auto path = std::make_shared<std::string>();
  const auto due = std::make_shared<std::string>();
  read->add_option("REFERENCE", *id, "The shop's own mark on the standard")->required()->type_name("");
  read->add_option("FILE", *path, "Its certificate, XML (DCC 3)")->required()->type_name("");
  read->add_option("--due", *due, "Day by which it is calibrated again, such as 2027-03-14")->type_name("");
  read->add_flag("--json", *json, "Print the standard as JSON");
  context.runs(read, [=](Shop& shop) { return readReference(shop, *id, *path, *due, *json); });

  CLI::App* list = context.add(group, "list", "List the reference standards", "sturn reference list");
  list->add_flag("--json", *json, R"(Print {"references": [...]})");
  context.runs(list, [=](Shop& shop) { return listReferences(shop, *json); });

  CLI::App* show = context.add(group, "show", "Show a reference standard", "sturn reference show REF-1");
  show->add_option("REFERENCE", *id, "Its mark")->required()->type_name("");
  show->add_flag("--json", *json, "Print the standard as JSON");
  context.runs(show, [=](Shop& shop) { return showReference(shop, *id, *json); });
}

}  // namespace steadyturn
