#include "report_output.h"

#include <CLI/CLI.hpp>
#include <QBuffer>
#include <filesystem>

#include "context.h"
#include "json_document.h"
#include "merkle.h"
#include "output_file.h"
#include "words.h"
#include "writers.h"

namespace steadyturn {

std::string endingOf(const std::string& file) {
  std::string ending = std::filesystem::path(file).extension().string();
  for (char& c : ending) c = c >= 'A' && c <= 'Z' ? static_cast<char>(c - 'A' + 'a') : c;
  return ending;
}

const std::map<std::string, WriteDocument>& documentWriters() {
  static const std::map<std::string, WriteDocument> writers{{".pdf", writePdf}, {".csv", writeCsv}};
  return writers;
}

void addFileOption(CLI::App& command, const std::shared_ptr<ReportFile>& file, const char* endings,
                   const std::function<bool(const std::string&)>& good) {
  command.add_option("-o,--output", file->path, std::string("The file to write; its ending chooses: ") + endings)
      ->required()
      ->type_name("FILE");
  command.add_flag("--json", file->json, R"(Print {"file", "entry", "sha256"})");
  command.parse_complete_callback([file, endings, good] {
    if (!good(endingOf(file->path))) refuseUsage("-o", "is \"" + file->path + "\"; it ends in " + endings);
  });
}

void addDocumentOption(CLI::App& command, const std::shared_ptr<ReportFile>& file) {
  addFileOption(command, file, ".pdf or .csv",
                [](const std::string& ending) { return documentWriters().contains(ending); });
}

Result<Output> writeReport(Shop& shop, const PaperSubject& paper, const ReportFile& file,
                           const std::function<Result<void>(QIODevice&)>& write) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  if (Result<void> written = write(buffer); !written) return tl::unexpected(written.error());
  const QByteArray& bytes = buffer.data();
  const std::string_view view(bytes.constData(), static_cast<std::size_t>(bytes.size()));
  if (auto written = writeOutputFile(file.path, view); !written) return tl::unexpected(written.error());
  const auto issued = recordIssue(shop, paper, endingOf(file.path).substr(1), view);
  Output output;
  if (!issued) {
    output.cautions.push_back(file.path +
                              " was written, but the ledger does not tell of it: " + words(issued.error().front()));
  }
  if (file.json) {
    output.text = writeDocument({{"file", file.path},
                                 {"entry", issued ? OrderedJson(issued->entry) : OrderedJson()},
                                 {"sha256", writeHash(sha256(view))}});
  } else {
    output.text = "Wrote " + file.path + '\n';
  }
  return output;
}

Result<Output> writeDocumentReport(Shop& shop, const PaperSubject& paper, const ReportFile& file,
                                   const ReportDocument& report) {
  return writeReport(shop, paper, file,
                     [&](QIODevice& out) { return documentWriters().at(endingOf(file.path))(report, out); });
}

}  // namespace steadyturn
