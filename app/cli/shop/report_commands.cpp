// `sturn report certificate|history`.
#include <CLI/CLI.hpp>
#include <QBuffer>
#include <filesystem>
#include <map>

#include "chart_picture.h"
#include "dcc.h"
#include "history_report.h"
#include "json_document.h"
#include "output_file.h"
#include "shop_commands.h"
#include "typed_values.h"
#include "writers.h"

namespace steadyturn {
namespace {

struct Typed {
  std::string tool, target, unit = "N.m", asOf, file;
  std::int64_t check = 0;
  bool json = false;
};

// By the ending of the file.
using WriteDocument = Result<void> (*)(const ReportDocument&, QIODevice&);
const std::map<std::string, WriteDocument> documentWriters{{".pdf", writePdf}, {".csv", writeCsv}};
using DrawChart = Result<void> (*)(const ChartModel&, const ChartTheme&, QSize, QIODevice&);
const std::map<std::string, DrawChart> chartWriters{{".svg", writeChartSvg}, {".png", writeChartPng}};
constexpr const char* certificateEndings = ".pdf, .csv or .xml (a Digital Calibration Certificate)";
constexpr const char* historyEndings = ".pdf, .csv, .svg or .png";

constexpr int chartWidth = 1200, chartHeight = 700;  // pixels

std::string endingOf(const std::string& file) {
  std::string ending = std::filesystem::path(file).extension().string();
  for (char& c : ending) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return ending;
}

void refuseOtherEnding(const std::string& file, bool good, const char* endings) {
  if (!good) refuseUsage("-o", "is \"" + file + "\"; it ends in " + endings);
}

template <typename Write>
Result<Output> writeReport(const Typed& typed, const Write& write) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  if (Result<void> written = write(buffer); !written) return tl::unexpected(written.error());
  const QByteArray& bytes = buffer.data();
  const std::string_view view(bytes.constData(), static_cast<std::size_t>(bytes.size()));
  if (auto written = writeOutputFile(typed.file, view); !written) return tl::unexpected(written.error());
  if (typed.json) return Output{.text = writeDocument({{"file", typed.file}}), .cautions = {}};
  return Output{.text = "Wrote " + typed.file + '\n', .cautions = {}};
}

Result<Output> writeCertificate(Shop& shop, const Typed& typed) {
  const auto data = shop.certificate(typed.check);
  if (!data) return tl::unexpected(data.error());
  return writeReport(typed, [&](QIODevice& out) {
    const auto writer = documentWriters.find(endingOf(typed.file));
    return writer == documentWriters.end() ? writeDcc(*data, out) : writer->second(buildCertificate(*data), out);
  });
}

Result<Output> writeHistory(Shop& shop, const Typed& typed) {
  TypedValues values;
  const Date asOf = values.optionalDate(typed.asOf, "as-of").value_or(shop.today());
  std::optional<StatedTorque> target;
  if (!typed.target.empty()) {
    target = StatedTorque{values.valueOf(parseTorqueNumber(typed.target, "target")), values.unit(typed.unit, "unit")};
  }
  if (!values.problems().empty()) return tl::unexpected(values.problems());
  const auto data = shop.history(typed.tool, target, asOf);
  if (!data) return tl::unexpected(data.error());
  const std::string ending = endingOf(typed.file);
  return writeReport(typed, [&](QIODevice& out) {
    if (const auto draw = chartWriters.find(ending); draw != chartWriters.end()) {
      return draw->second(historyChart(*data), lightTheme(), {chartWidth, chartHeight}, out);
    }
    return documentWriters.at(ending)(buildHistoryReport(*data, shop.name(), shop.today()), out);
  });
}

void addFileOption(CLI::App& command, Typed& typed, const char* endings) {
  command.add_option("-o,--output", typed.file, std::string("The file to write; its ending chooses: ") + endings)
      ->required()
      ->type_name("FILE");
  command.add_flag("--json", typed.json, R"(Print {"file"})");
}

}  // namespace

void addReportCommands(Context& context) {
  CLI::App& group = *context.addGroup("report", "Reports written to files: certificate, history");
  group.footer(
      "The shop: --shop FILE, or STURN_SHOP in the environment.\n"
      "Example: sturn report certificate 42 -o certificate.pdf");
  const auto typed = std::make_shared<Typed>();

  CLI::App* certificate = context.add(group, "certificate", "Write the certificate of a check",
                                      "sturn report certificate 42 -o certificate.pdf");
  certificate->add_option("CHECK", typed->check, "The check's number")->required()->type_name("");
  addFileOption(*certificate, *typed, certificateEndings);
  certificate->parse_complete_callback([typed] {
    const std::string ending = endingOf(typed->file);
    refuseOtherEnding(typed->file, documentWriters.contains(ending) || ending == ".xml", certificateEndings);
  });
  context.runs(
      certificate, [typed](Shop& shop) { return writeCertificate(shop, *typed); }, Face::Picture);

  CLI::App* history = context.add(group, "history", "Write a tool's history at one set-point: chart, drift, checks",
                                  "sturn report history TW-07 -o history.svg");
  history->add_option("TOOL", typed->tool, "The tool's mark")->required()->type_name("");
  history->add_option("--target", typed->target, "The set-point; else the one that decides")->type_name("");
  history->add_option("--unit", typed->unit, "Unit of --target (N.m)")->type_name("");
  history->add_option("--as-of", typed->asOf, "The day it is asked for, such as 2026-06-01; else today")
      ->type_name("");
  addFileOption(*history, *typed, historyEndings);
  history->parse_complete_callback([typed] {
    const std::string ending = endingOf(typed->file);
    refuseOtherEnding(typed->file, documentWriters.contains(ending) || chartWriters.contains(ending), historyEndings);
  });
  context.runs(
      history, [typed](Shop& shop) { return writeHistory(shop, *typed); }, Face::Picture);
}

}  // namespace steadyturn
