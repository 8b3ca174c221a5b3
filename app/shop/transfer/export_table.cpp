#include "kinds.h"
#include "transfer.h"

namespace steadyturn {

const FileKind& kindOf(TableKind kind) {
  switch (kind) {
    case TableKind::Tools:
      return toolFile;
    case TableKind::References:
      return referenceFile;
    case TableKind::Fasteners:
      return fastenerFile;
    case TableKind::Checks:
      return checkFile;
    case TableKind::Tightenings:
      return tighteningFile;
  }
  return toolFile;
}

Result<void> exportTable(const Shop::Inside& shop, TableKind tableKind, std::ostream& out,
                         const ExportOptions& options, const Progress& progress) {
  const FileKind& kind = kindOf(tableKind);
  TableWriter writer(out, options.decimalComma, progress);
  for (const FileColumn& column : kind.columns) writer.code(column.name);
  writer.endRow();
  kind.write(shop, writer);
  return writer.finish();
}

}  // namespace steadyturn
