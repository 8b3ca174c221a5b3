// `sturn report due|register|labels`: papers about many tools at once.
#include <CLI/CLI.hpp>

#include "papers.h"
#include "report_output.h"
#include "shop_commands.h"
#include "typed_values.h"

namespace steadyturn {
namespace {

struct TypedRegister {
  std::string asOf, within = "30";
  std::vector<std::string> tools;
  int skip = 0;
  bool single = false;
};

Result<Output> writeDue(Shop& shop, const TypedRegister& typed, const ReportFile& file) {
  TypedValues values;
  const Date asOf = values.optionalDate(typed.asOf, "as-of").value_or(shop.today());
  const int within = values.optionalWhole(typed.within, "within").value_or(0);
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const auto data = dueListOf(shop, asOf, within);
  if (!data) return tl::unexpected(data.error());
  return writeDocumentReport(shop, {.what = "due"}, file, buildDueList(*data));
}

Result<Output> writeRegister(Shop& shop, const TypedRegister& typed, const ReportFile& file) {
  TypedValues values;
  const Date asOf = values.optionalDate(typed.asOf, "as-of").value_or(shop.today());
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const auto data = shop.toolRegister(asOf);
  if (!data) return tl::unexpected(data.error());
  return writeDocumentReport(shop, {.what = "register"}, file, buildToolRegister(*data));
}

Result<Output> writeLabelFile(Shop& shop, const TypedRegister& typed, const ReportFile& file) {
  const auto labels = labelsOf(shop, typed.tools);
  if (!labels) return tl::unexpected(labels.error());
  LabelSheet sheet = typed.single ? singleLabel() : a4Labels();
  sheet.skip = typed.skip;
  return writeReport(shop, {.what = "labels"}, file,
                     [&](QIODevice& out) { return writeLabels(*labels, sheet, shop.today(), out); });
}

}  // namespace

void addRegisterReports(Context& context, CLI::App& group) {
  const auto typed = std::make_shared<TypedRegister>();
  const auto file = std::make_shared<ReportFile>();
  const char* asOfHelp = "The day it is asked for, such as 2026-06-01; else today";

  CLI::App* due = context.add(group, "due", "Write the bench's work as a list: what is due, why, and what to check",
                              "sturn report due --within 30 -o due.pdf");
  due->add_option("--as-of", typed->asOf, asOfHelp)->type_name("");
  due->add_option("--within", typed->within, "Days to look ahead (30)")->type_name("");
  addDocumentOption(*due, file);
  context.runs(
      due, [=](Shop& shop) { return writeDue(shop, *typed, *file); }, Face::Picture);

  CLI::App* tools =
      context.add(group, "register", "Write the register of all tools", "sturn report register -o tools.pdf");
  tools->add_option("--as-of", typed->asOf, asOfHelp)->type_name("");
  addDocumentOption(*tools, file);
  context.runs(
      tools, [=](Shop& shop) { return writeRegister(shop, *typed, *file); }, Face::Picture);

  CLI::App* labels = context.add(group, "labels", "Write labels for tools, with a QR code that opens the tool",
                                 "sturn report labels W06 W07 --single -o labels.pdf");
  labels->add_option("TOOL", typed->tools, "The tools' marks; else every tool in use")->type_name("");
  labels->add_flag("--single", typed->single, "One label a page (62 × 29 mm); else A4 sheets of 24");
  labels->add_option("--skip", typed->skip, "Places used up already on the first sheet (0)")->type_name("");
  addFileOption(*labels, file, ".pdf", [](const std::string& ending) { return ending == ".pdf"; });
  context.runs(
      labels, [=](Shop& shop) { return writeLabelFile(shop, *typed, *file); }, Face::Picture);
}

}  // namespace steadyturn
