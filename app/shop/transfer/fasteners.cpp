#include <array>

#include "register_intake.h"

namespace steadyturn {
namespace {

constexpr auto columns = std::to_array<FileColumn>({{"fastener", true},
                                                    {"assembly"},
                                                    {"component", true},
                                                    {"thread"},
                                                    {"property_class"},
                                                    {"part_material"},
                                                    {"drive"},
                                                    {"target", true},
                                                    {"low"},
                                                    {"high"},
                                                    {"unit", true},
                                                    {"angle_deg"},
                                                    {"part_limit"},
                                                    {"seal"},
                                                    {"renew"},
                                                    {"lubrication"},
                                                    {"seat_check"},
                                                    {"source"},
                                                    {"revision"}});
enum Cell {
  fastener,
  assembly,
  component,
  thread,
  propertyClass,
  partMaterial,
  drive,
  target,
  low,
  high,
  unit,
  angle,
  partLimit,
  seal,
  renew,
  lubrication,
  seatCheck,
  source,
  revision
};

Fastener readFastener(ImportRow& row) {
  return {.id = row.text(fastener),
          .assembly = row.text(assembly),
          .component = row.text(component),
          .thread = row.text(thread),
          .propertyClass = row.text(propertyClass),
          .partMaterial = row.text(partMaterial),
          .drive = row.text(drive),
          .unit = row.unit(unit),
          .target = row.number(target),
          .low = row.optionalNumber(low),
          .high = row.optionalNumber(high),
          .angleDeg = row.optionalNumber(angle),
          .partLimit = row.optionalNumber(partLimit),
          .seal = row.text(seal),
          .renew = row.flag(renew),
          .lubrication = row.text(lubrication),
          .seatCheck = row.text(seatCheck),
          .source = row.text(source),
          .revision = row.text(revision),
          .revisionReason = {}};
}

void writeFastener(TableWriter& writer, const Fastener& from) {
  writer.text(from.id);
  writer.text(from.assembly);
  writer.text(from.component);
  writer.text(from.thread);
  writer.text(from.propertyClass);
  writer.text(from.partMaterial);
  writer.text(from.drive);
  writer.number(from.target);
  writer.number(from.low);
  writer.number(from.high);
  writer.code(unitCode(from.unit));
  writer.number(from.angleDeg);
  writer.number(from.partLimit);
  writer.text(from.seal);
  writer.flag(from.renew);
  writer.text(from.lubrication);
  writer.text(from.seatCheck);
  writer.text(from.source);
  writer.text(from.revision);
}

}  // namespace

const FileKind fastenerFile{
    .columns = columns,
    .intake = [](ImportRun& import) -> std::unique_ptr<Intake> {
      return std::make_unique<RegisterIntake<FastenerTable, Fastener>>(import, import.shop.fasteners, readFastener);
    },
    .write = [](const Shop::Inside& shop,
                TableWriter& writer) { writeRegister(writer, shop.fasteners.all(), writeFastener); }};

}  // namespace steadyturn
