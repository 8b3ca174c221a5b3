// `sturn import` and `sturn export`.
#include <CLI/CLI.hpp>
#include <iostream>

#include "json_document.h"
#include "output_file.h"
#include "progress_line.h"
#include "shop_commands.h"

namespace steadyturn {
namespace {

struct TypedTransfer {
  std::string kind, file, decimal = "point", by;
  bool again = false, json = false;
};

constexpr const char* kinds = "tools, references, fasteners, checks or tightenings";

TableKind kindOfTransfer(const TypedTransfer& typed) {
  const auto kind = parseTableKind(typed.kind);
  if (!kind) refuseUsage("KIND", "is \"" + typed.kind + "\"; it is one of " + kinds);
  return *kind;
}

Result<Output> importFile(Shop& shop, TableKind kind, const TypedTransfer& typed) {
  Result<ImportReport> report;
  {
    ProgressLine line("import");
    report = shop.importCsv(kind, typed.file,
                            {.decimalComma = typed.decimal == "comma", .again = typed.again, .by = typed.by},
                            line.progress());
  }
  if (!report) return tl::unexpected(std::move(report.error()));
  if (typed.json) {
    return Output{
        .text = writeDocument({{"rows", report->rows}, {"records", report->records}, {"warnings", report->warnings}}),
        .cautions = {}};
  }
  return Output{.text = "Took in " + std::to_string(report->records) + ' ' + std::string(writeTableKind(kind)) +
                        " from " + std::to_string(report->rows) + " rows\n",
                .cautions = report->warnings};
}

Result<Output> exportFile(Shop& shop, TableKind kind, const TypedTransfer& typed) {
  ProgressLine line("export");
  const Progress progress = line.progress();
  const auto write = [&](std::ostream& out) {
    return shop.exportCsv(kind, out, {.decimalComma = typed.decimal == "comma"}, progress);
  };
  if (!typed.file.empty()) {
    if (auto written = writeOutputFile(typed.file, write); !written) return tl::unexpected(written.error());
    return Output{};
  }
  std::ios::sync_with_stdio(false);
  if (auto written = write(std::cout); !written) return tl::unexpected(written.error());
  std::cout.flush();
  if (std::cout.good()) return Output{};
  return refuse({.kind = ProblemKind::CannotCreate,
                 .field = "standard output",
                 .accepted = "an output with room that stays open"});
}

CLI::App* addTransfer(Context& context, const std::shared_ptr<TypedTransfer>& typed, const char* name,
                      const char* purpose, const char* example) {
  CLI::App* command = context.add(context.app(), name, purpose, example);
  command->add_option("KIND", typed->kind, kinds)->required()->type_name("");
  command->add_option("--decimal", typed->decimal, "Decimal mark of the file: point or comma (point)")
      ->type_name("")
      ->check(CLI::IsMember({"point", "comma"}));
  return command;
}

}  // namespace

void addTransferCommands(Context& context) {
  const auto typed = std::make_shared<TypedTransfer>();

  CLI::App* import = addTransfer(context, typed, "import", "Take in a CSV file: all of it, or nothing",
                                 "sturn import checks history.csv --decimal comma");
  import->add_option("FILE", typed->file, "CSV file with a header (RFC 4180, UTF-8; ',' or ';')")
      ->required()
      ->type_name("");
  import->add_flag("--again", typed->again, "Take in a file that was taken in before, where rows are not duplicates");
  import->add_option("--by", typed->by, "Who, for rows that name nobody")->type_name("");
  import->add_flag("--json", typed->json, R"(Print {"rows", "records", "warnings"})");
  context.runs(import, [typed](Shop& shop) { return importFile(shop, *parseTableKind(typed->kind), *typed); });

  CLI::App* out = addTransfer(context, typed, "export", "Write a CSV file that import reads back",
                              "sturn export checks history.csv");
  out->add_option("FILE", typed->file, "The file to write; standard output without it")->type_name("");
  context.runs(out, [typed](Shop& shop) { return exportFile(shop, *parseTableKind(typed->kind), *typed); });

  for (CLI::App* command : {import, out}) {
    command->parse_complete_callback([typed] { kindOfTransfer(*typed); });
  }
}

}  // namespace steadyturn
