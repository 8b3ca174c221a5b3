// What one kind of file is: its columns, its way in and its way out. Each kind has a source of its own.
#pragma once

#include <memory>
#include <span>

#include "advance.h"
#include "columns.h"
#include "import_row.h"
#include "inside.h"
#include "table_writer.h"

namespace steadyturn {

// One import under way.
struct ImportRun {
  Shop::Inside& shop;
  const ImportOptions& options;
  ProblemList problems{};
  ImportReport report{};
  std::size_t unlistedWarnings = 0;

  // The first 100 are kept, the rest counted.
  void warn(std::size_t line, const std::string& text);
};

// Takes in the rows of one file, one after the other.
class Intake {
 public:
  virtual ~Intake() = default;
  virtual void take(ImportRow& row) = 0;
  // After the last row: finds what can only be seen now, and writes, unless there are problems. `advance` goes from 0
  // to 1; returns early when it is cancelled.
  virtual void finish(const EntryStamp& stamp, const std::function<bool(double)>& advance) = 0;
};

struct FileKind {
  std::span<const FileColumn> columns;
  std::unique_ptr<Intake> (*intake)(ImportRun& import);
  // Every record of the shop, a row a record or reading.
  void (*write)(const Shop::Inside& shop, TableWriter& writer);
};

extern const FileKind toolFile, referenceFile, fastenerFile, checkFile, tighteningFile;
const FileKind& kindOf(TableKind kind);

}  // namespace steadyturn
