#include "dcc.h"

#include <fmt/format.h>

#include "dcc_parts.h"
#include "whole_write.h"

namespace steadyturn {
namespace {

Result<std::vector<std::vector<double>>> readingsOf(const Check& check) {
  std::vector<std::vector<double>> all;
  for (const auto& point : check.points) {
    auto& values = all.emplace_back();
    for (const auto& typed : point.readings) {
      const auto value = parseTorqueNumber(typed, "readings");
      if (!value) return tl::unexpected(value.error());
      values.push_back(*value);
    }
  }
  return all;
}

}  // namespace

std::string dccVerdict(Verdict verdict) {
  switch (verdict) {
    case Verdict::Pass:
      return "pass";
    case Verdict::ConditionalPass:
      return "conditionalPass";
    case Verdict::ConditionalFail:
      return "conditionalFail";
    case Verdict::Fail:
      break;
  }
  return "fail";
}

std::string dccUnit(Unit unit) {
  if (unit == Unit::NewtonMetre) return "\\newton\\metre";
  return fmt::format("|{}", unitCode(unit));
}

Result<void> writeDcc(const CertificateData& data, QIODevice& out) {
  DccReadings readings;
  auto read = readingsOf(data.check);
  if (!read) return tl::unexpected(read.error());
  readings.check = std::move(*read);
  if (data.before) {
    auto before = readingsOf(*data.before);
    if (!before) return tl::unexpected(before.error());
    readings.before = std::move(*before);
  }
  QByteArray bytes;
  DccXml xml(bytes);
  xml.begin();
  writeAdministration(xml, data);
  writeMeasurement(xml, data, readings);
  xml.end();
  return writeWhole(out, bytes);
}

}  // namespace steadyturn
