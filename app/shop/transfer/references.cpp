#include <array>

#include "register_intake.h"

namespace steadyturn {
namespace {

constexpr auto columns = std::to_array<FileColumn>({{"reference", true},
                                                    {"description"},
                                                    {"serial"},
                                                    {"certificate"},
                                                    {"calibrated"},
                                                    {"due"},
                                                    {"expanded_uncertainty_percent", true},
                                                    {"coverage_factor"},
                                                    {"error_percent"}});
enum Cell {
  reference,
  description,
  serial,
  certificate,
  calibrated,
  due,
  expandedUncertainty,
  coverageFactor,
  error
};

Reference readReference(ImportRow& row) {
  return {.id = row.text(reference),
          .description = row.text(description),
          .serial = row.text(serial),
          .certificate = row.text(certificate),
          .calibrated = row.optionalDate(calibrated),
          .due = row.optionalDate(due),
          .expandedUncertaintyPercent = row.number(expandedUncertainty),
          .coverageFactor = row.optionalNumber(coverageFactor),
          .errorPercent = row.optionalNumber(error)};
}

void writeReference(TableWriter& writer, const Reference& from) {
  writer.text(from.id);
  writer.text(from.description);
  writer.text(from.serial);
  writer.text(from.certificate);
  writer.date(from.calibrated);
  writer.date(from.due);
  writer.number(from.expandedUncertaintyPercent);
  writer.number(from.coverageFactor);
  writer.number(from.errorPercent);
}

}  // namespace

const FileKind referenceFile{
    .columns = columns,
    .intake = [](ImportRun& import) -> std::unique_ptr<Intake> {
      return std::make_unique<RegisterIntake<ReferenceTable, Reference>>(import, import.shop.references,
                                                                         readReference);
    },
    .write = [](const Shop::Inside& shop,
                TableWriter& writer) { writeRegister(writer, shop.references.all(), writeReference); }};

}  // namespace steadyturn
