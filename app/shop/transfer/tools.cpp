#include <array>

#include "register_intake.h"

namespace steadyturn {
namespace {

constexpr auto columns = std::to_array<FileColumn>({{"tool", true},
                                                    {"description"},
                                                    {"maker"},
                                                    {"serial"},
                                                    {"type", true},
                                                    {"class", true},
                                                    {"min"},
                                                    {"max", true},
                                                    {"unit", true},
                                                    {"resolution"},
                                                    {"drive"},
                                                    {"interval_days"},
                                                    {"limit_percent"}});
enum Cell {
  tool,
  description,
  maker,
  serial,
  type,
  toolClass,
  min,
  max,
  unit,
  resolution,
  drive,
  intervalDays,
  limitPercent
};

Tool readTool(ImportRow& row) {
  return {.id = row.text(tool),
          .description = row.text(description),
          .maker = row.text(maker),
          .serial = row.text(serial),
          .kind = row.valueOf(parseToolKind(row.code(type), row.code(toolClass))),
          .unit = row.unit(unit),
          .minimum = row.optionalNumber(min),
          .maximum = row.number(max),
          .resolution = row.optionalNumber(resolution),
          .drive = row.text(drive),
          .intervalDays = row.optionalWhole(intervalDays),
          .limitPercent = row.optionalNumber(limitPercent),
          .statusReason = {}};
}

void writeTool(TableWriter& writer, const Tool& from) {
  writer.text(from.id);
  writer.text(from.description);
  writer.text(from.maker);
  writer.text(from.serial);
  writer.code(writeType(from.kind.type));
  writer.code(writeClass(from.kind.cls));
  writer.number(from.minimum);
  writer.number(from.maximum);
  writer.code(unitCode(from.unit));
  writer.number(from.resolution);
  writer.text(from.drive);
  writer.number(from.intervalDays ? std::optional<double>(*from.intervalDays) : std::nullopt);
  writer.number(from.limitPercent);
}

}  // namespace

const FileKind toolFile{.columns = columns,
                        .intake = [](ImportRun& import) -> std::unique_ptr<Intake> {
                          return std::make_unique<RegisterIntake<ToolTable, Tool>>(import, import.shop.tools,
                                                                                   readTool);
                        },
                        .write = [](const Shop::Inside& shop,
                                    TableWriter& writer) { writeRegister(writer, shop.tools.all(), writeTool); }};

}  // namespace steadyturn
