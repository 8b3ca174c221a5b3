#include "inside.h"
#include "transfer.h"

namespace steadyturn {

Result<ImportReport> Shop::importCsv(TableKind kind, const std::string& path, const ImportOptions& options,
                                     const Progress& progress) {
  auto named = options;
  if (named.by.empty()) named.by = inside_->who;  // rows that name somebody tell of the past
  return guarded([&]() -> Result<ImportReport> { return importTable(*inside_, kind, path, named, progress); });
}

Result<void> Shop::exportCsv(TableKind kind, std::ostream& out, const ExportOptions& options,
                             const Progress& progress) const {
  return guarded([&]() -> Result<void> { return exportTable(*inside_, kind, out, options, progress); });
}

}  // namespace steadyturn
