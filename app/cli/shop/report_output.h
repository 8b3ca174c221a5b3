// Reports as files: the ending of the name chooses the writer, and the file is complete or not there.
#pragma once

#include <QIODevice>
#include <functional>
#include <map>
#include <string>

#include "command.h"
#include "report_document.h"

namespace CLI {
class App;
}

namespace steadyturn {

struct ReportFile {
  std::string path;
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

Result<Output> writeReport(const ReportFile& file, const std::function<Result<void>(QIODevice&)>& write);
Result<Output> writeDocumentReport(const ReportFile& file, const ReportDocument& report);

}  // namespace steadyturn
