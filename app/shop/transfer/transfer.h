// Whole tables in and out as CSV (RFC 4180). The columns of each kind stand in the kind's own source (tools.cpp …),
// in the order in which an export has them.
//
// Numbers have a decimal point; with decimal commas the separator of an export is ';', so that no number needs
// quotes. Texts that a spreadsheet would run as a formula are guarded (formula_guard.h), numbers never. Rows with
// nothing in any cell, which spreadsheets leave behind, are passed over.
#pragma once

#include <iosfwd>
#include <string>

#include "inside.h"

namespace steadyturn {

// All or nothing, in one transaction. Every bad row is told with its line and column: the first 100, then one problem
// more whose `found` counts the rest. Problems: FileMissing, BadInput, NotFound and Conflict (rows; a file taken in
// before), Cancelled.
Result<ImportReport> importTable(Shop::Inside& shop, TableKind kind, const std::string& path,
                                 const ImportOptions& options, const Progress& progress);

// A problem of kind CannotCreate when the stream fails, Cancelled when progress says so. What was written till then
// stays in the stream.
Result<void> exportTable(const Shop::Inside& shop, TableKind kind, std::ostream& out, const ExportOptions& options,
                         const Progress& progress);

}  // namespace steadyturn
