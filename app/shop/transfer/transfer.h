// Whole tables in and out as CSV (RFC 4180): see the column lists in columns.h.
#pragma once

#include <iosfwd>
#include <string>

#include "inside.h"

namespace steadyturn {

// All or nothing, in one transaction. Every bad row is told with its line and column (the first 100, then a count).
Result<ImportReport> importTable(Shop::Inside& shop, TableKind kind, const std::string& path, const ImportOptions& options,
                                 const Progress& progress);
// A problem of kind CannotCreate when the stream fails.
Result<void> exportTable(const Shop::Inside& shop, TableKind kind, std::ostream& out, const ExportOptions& options,
                         const Progress& progress);

}  // namespace steadyturn
