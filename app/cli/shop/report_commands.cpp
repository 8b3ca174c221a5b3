// `sturn report certificate|history|job`.
#include <CLI/CLI.hpp>
#include <cstdlib>
#include <map>

#include "chart_picture.h"
#include "dcc.h"
#include "history_report.h"
#include "passphrase.h"
#include "report_output.h"
#include "shop_commands.h"
#include "typed_values.h"

namespace steadyturn {
namespace {

struct TypedReport {
  std::string tool, target, unit = "N.m", asOf, job;
  std::int64_t check = 0;
  bool sign = false;
};

using DrawChart = Result<void> (*)(const ChartModel&, const ChartTheme&, QSize, QIODevice&);
const std::map<std::string, DrawChart> chartWriters{{".svg", writeChartSvg}, {".png", writeChartPng}};

constexpr int chartWidth = 1200, chartHeight = 700;  // pixels

// Signed where somebody stands for it: asked for, or with the passphrase at hand in a shop that has a key.
Result<CertificateData> certificateOf(Shop& shop, const TypedReport& typed) {
  const auto hasKey = hasSigningKey(shop);
  if (!hasKey) return tl::unexpected(hasKey.error());
  if (!typed.sign && !(*hasKey && std::getenv(passphraseVariable) != nullptr)) return shop.certificate(typed.check);
  const auto passphrase = askPassphrase(passphraseVariable, "Passphrase of the signing key");
  if (!passphrase) return tl::unexpected(passphrase.error());
  return signedCertificate(shop, typed.check, *passphrase);
}

Result<Output> writeCertificate(Shop& shop, const TypedReport& typed, const ReportFile& file) {
  const auto data = certificateOf(shop, typed);
  if (!data) return tl::unexpected(data.error());
  const PaperSubject paper{.what = "certificate", .id = std::to_string(typed.check)};
  if (endingOf(file.path) != ".xml") return writeDocumentReport(shop, paper, file, buildCertificate(*data));
  return writeReport(shop, paper, file, [&](QIODevice& out) { return writeDcc(*data, out); });
}

Result<Output> writeJobSheet(Shop& shop, const std::string& job, const ReportFile& file) {
  const auto data = shop.jobSheetData(job);
  if (!data) return tl::unexpected(data.error());
  return writeDocumentReport(shop, {.what = "job", .id = job}, file, buildJobSheet(*data));
}

Result<Output> writeRecall(Shop& shop, const std::string& tool, const ReportFile& file) {
  const auto data = shop.recallReport(tool);
  if (!data) return tl::unexpected(data.error());
  return writeDocumentReport(shop, {.what = "recall", .id = tool}, file, buildRecallReport(*data));
}

Result<Output> writeHistory(Shop& shop, const TypedReport& typed, const ReportFile& file) {
  TypedValues values;
  const Date asOf = values.optionalDate(typed.asOf, "as-of").value_or(shop.today());
  std::optional<StatedTorque> target;
  if (!typed.target.empty()) {
    target = StatedTorque{values.valueOf(parseTorqueNumber(typed.target, "target")), values.unit(typed.unit, "unit")};
  }
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const auto data = shop.history(typed.tool, target, asOf);
  if (!data) return tl::unexpected(data.error());
  const PaperSubject paper{.what = "history", .id = typed.tool};
  if (const auto draw = chartWriters.find(endingOf(file.path)); draw != chartWriters.end()) {
    return writeReport(shop, paper, file, [&](QIODevice& out) {
      return draw->second(historyChart(*data), lightTheme(), {chartWidth, chartHeight}, out);
    });
  }
  return writeDocumentReport(shop, paper, file, buildHistoryReport(*data, shop.name(), shop.today()));
}

}  // namespace

void addReportCommands(Context& context) {
  CLI::App& group = *context.addGroup(
      "report", "Reports written to files: certificate, history, recall, job, due, register, labels");
  group.footer(
      "The shop: --shop SHOP, or STURN_SHOP in the environment.\n"
      "Example: sturn report certificate 42 -o certificate.pdf");
  const auto typed = std::make_shared<TypedReport>();
  const auto file = std::make_shared<ReportFile>();

  CLI::App* certificate = context.add(group, "certificate", "Write the certificate of a check",
                                      "sturn report certificate 42 -o certificate.pdf");
  certificate->add_option("CHECK", typed->check, "The check's number")->required()->type_name("");
  certificate->add_flag("--sign", typed->sign,
                        "Sign the ledger's head for it (asks for the passphrase; STURN_PASSPHRASE alone signs, too)");
  addFileOption(*certificate, file, ".pdf, .csv or .xml (a Digital Calibration Certificate)",
                [](const std::string& ending) { return documentWriters().contains(ending) || ending == ".xml"; });
  context.runs(
      certificate, [=](Shop& shop) { return writeCertificate(shop, *typed, *file); }, Face::Picture);

  CLI::App* history = context.add(group, "history", "Write a tool's history at one set-point: chart, drift, checks",
                                  "sturn report history TW-07 -o history.svg");
  history->add_option("TOOL", typed->tool, "The tool's mark")->required()->type_name("");
  history->add_option("--target", typed->target, "The set-point; else the one that decides")->type_name("");
  history->add_option("--unit", typed->unit, "Unit of --target (N.m)")->type_name("");
  history->add_option("--as-of", typed->asOf, "The day it is asked for, such as 2026-06-01; else today")
      ->type_name("");
  addFileOption(*history, file, ".pdf, .csv, .svg or .png", [](const std::string& ending) {
    return documentWriters().contains(ending) || chartWriters.contains(ending);
  });
  context.runs(
      history, [=](Shop& shop) { return writeHistory(shop, *typed, *file); }, Face::Picture);

  CLI::App* job = context.add(group, "job", "Write the sheet of a job", "sturn report job J-1001 -o sheet.pdf");
  job->add_option("JOB", typed->job, "The job's mark")->required()->type_name("");
  addDocumentOption(*job, file);
  context.runs(
      job, [=](Shop& shop) { return writeJobSheet(shop, typed->job, *file); }, Face::Picture);

  CLI::App* recall = context.add(group, "recall", "Write what a tool's failed check puts in doubt, and the decisions",
                                 "sturn report recall TW-07 -o recall.pdf");
  recall->add_option("TOOL", typed->tool, "The tool's mark")->required()->type_name("");
  addDocumentOption(*recall, file);
  context.runs(
      recall, [=](Shop& shop) { return writeRecall(shop, typed->tool, *file); }, Face::Picture);
  addRegisterReports(context, group);
}

}  // namespace steadyturn
