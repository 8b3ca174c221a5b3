#include <algorithm>
#include <utility>

#include "csv_reader.h"
#include "import_file.h"
#include "kinds.h"
#include "transfer.h"
#include "writing.h"

namespace steadyturn {
namespace {

// Reading is the lesser part of an import; the rest is evaluating and writing.
constexpr double readingShare = 0.3;

bool isEmpty(const CsvRow& row) {
  return std::ranges::all_of(row.cells, [](std::string_view cell) { return cell.empty(); });
}

void takeRows(CsvReader& reader, ImportRow& row, Intake& intake, ImportRun& import) {
  for (;;) {
    switch (reader.next()) {
      case CsvReader::Step::Row:
        if (isEmpty(reader.row())) break;
        ++import.report.rows;
        row.show(reader.row());
        intake.take(row);
        break;
      case CsvReader::Step::Bad:
        import.problems.add(reader.problem());
        break;
      case CsvReader::Step::End:
        return;
    }
  }
}

Problem takenInBefore(const std::string& path) {
  return {.kind = ProblemKind::Conflict,
          .field = path,
          .found = "a file that was imported before",
          .accepted = "a file with new content, or asking for it again"};
}

}  // namespace

void ImportRun::warn(std::size_t line, const std::string& text) {
  constexpr std::size_t most = 100;
  if (report.warnings.size() < most) {
    report.warnings.push_back("line " + std::to_string(line) + ": " + text);
  } else {
    ++unlistedWarnings;
  }
}

Result<ImportReport> importTable(Shop::Inside& shop, TableKind tableKind, const std::string& path,
                                 const ImportOptions& options, const Progress& progress) {
  auto file = ImportFile::open(path);
  if (!file) return tl::unexpected(file.error());
  const FileKind& kind = kindOf(tableKind);
  Advance advance(progress);
  CsvReader reader([&](char* into, std::size_t room) {
    return advance.to(readingShare * file->fraction()) ? file->read(into, room) : 0;
  });
  const auto header = reader.header();
  if (file->failed()) return refuse(unreadable(path, "a file that can't be read"));
  if (advance.cancelled()) return refuse(cancelledByPerson());
  if (!header) return tl::unexpected(header.error());
  auto places = placeColumns(kind.columns, *header);
  if (!places) return tl::unexpected(places.error());

  // Before the first look at what the shop has, so that nobody changes it till the rows are in.
  Writing writing(shop, Act::Import);
  ImportRun import{.shop = shop, .options = options};
  ImportRow row(kind.columns, std::move(*places), options.decimalComma, import.problems);
  const auto intake = kind.intake(import);
  takeRows(reader, row, *intake, import);
  if (advance.cancelled()) return refuse(cancelledByPerson());
  if (file->failed()) return refuse(unreadable(path, "a file that can't be read to its end"));

  const std::string name(writeTableKind(tableKind));
  const std::string sha256 = file->sha256();
  if (!options.again && shop.facts.fileWasImported(name, sha256)) return refuse(takenInBefore(path));
  const EntryStamp stamp = writing.stamp();
  intake->finish(stamp, [&](double part) { return advance.to(readingShare + (1 - readingShare) * part); });
  if (advance.cancelled()) return refuse(cancelledByPerson());
  if (!import.problems.empty()) return tl::unexpected(import.problems.take());
  // A file without rows left nothing behind that a second import would double.
  if (import.report.rows > 0) shop.facts.rememberFile(name, sha256, import.report.rows, stamp);
  writing.commit();
  if (import.unlistedWarnings > 0) {
    import.report.warnings.push_back(std::to_string(import.unlistedWarnings) + " warnings more");
  }
  advance.to(1);
  return std::move(import.report);
}

}  // namespace steadyturn
