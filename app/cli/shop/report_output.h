// Reports as files: the ending of the name chooses the writer, the file is complete or not there, and the shop's
// ledger tells that it was issued.
#pragma once

#include <QIODevice>
#include <functional>
#include <map>
#include <string>

#include "command.h"
#include "report_document.h"
#include "shop_signing.h"

namespace CLI {
class App;
}

namespace steadyturn {

struct ReportFile {
  std::string path{};
  bool json = false;
};

std::string endingOf(const std::string& file);  // ".pdf", in small letters

// Writers of a report document by ending: .pdf, .csv.
using WriteDocument = Result<void> (*)(const ReportDocument&, QIODevice&);
const std::map<std::string, WriteDocument>& documentWriters();

// Adds -o and --json; a name with an ending that `good` does not know is bad usage.
void addFileOption(CLI::App& command, const std::shared_ptr<ReportFile>& file, const char* endings,
                   const std::function<bool(const std::string& ending)>& good);
// For reports that are documents alone.
void addDocumentOption(CLI::App& command, const std::shared_ptr<ReportFile>& file);

// A shop that can't take the entry of a paper now does not keep the paper back: that is a caution.
Result<Output> writeReport(Shop& shop, const PaperSubject& paper, const ReportFile& file,
                           const std::function<Result<void>(QIODevice&)>& write);
Result<Output> writeDocumentReport(Shop& shop, const PaperSubject& paper, const ReportFile& file,
                                   const ReportDocument& report);

}  // namespace steadyturn
