#include <fmt/format.h>

#include <cmath>

#include "certificate_words.h"
#include "dcc_parts.h"

namespace steadyturn {
namespace {

std::string list(const std::vector<double>& values) {
  std::vector<std::string> words;
  for (const double value : values) words.push_back(writeNumber(value));
  return fmt::format("{}", fmt::join(words, " "));
}

template <typename Take>
std::vector<double> column(const Check& check, Take take) {
  std::vector<double> values;
  for (const auto& point : check.points) values.push_back(take(point));
  return values;
}

void writeMethod(DccXml& xml) {
  const auto methods = xml.dcc("usedMethods");
  const auto method = xml.dcc("usedMethod");
  xml.dccContent("name", "Comparison with a reference standard");
  xml.dccContent(
      "description",
      "Deviation a = (Xa - Xr) / Xr × 100 %, Xa the value set or shown, Xr the reference value; uncertainty after "
      "ISO 6789-2:2017.");
  xml.dccText("norm", "ISO 6789-1:2017");
  xml.dccText("norm", "ISO 6789-2:2017");
}

void writeReference(DccXml& xml, const CertificateData& data) {
  if (!data.reference) return;
  const auto& reference = *data.reference;
  const auto equipments = xml.dcc("measuringEquipments");
  const auto equipment = xml.dcc("measuringEquipment");
  xml.dccContent("name", reference.description.empty() ? reference.id : reference.description);
  const auto& used = data.check.referenceUncertainty;
  xml.dccContent("description",
                 fmt::format("Certificate {}, calibrated {}; expanded uncertainty {} %, k = {}, own error {} %",
                             reference.certificate.empty() ? "not recorded" : reference.certificate,
                             reference.calibrated ? writeDate(*reference.calibrated) : "not recorded",
                             writeNumber(used.expandedPercent), writeNumber(used.coverageFactor),
                             writeNumber(used.errorPercent)));
  const auto identifications = xml.dcc("identifications");
  const auto identify = [&](const char* issuer, const std::string& value, const char* name) {
    if (value.empty()) return;
    const auto identification = xml.dcc("identification");
    xml.dccText("issuer", issuer);
    xml.dccText("value", value);
    xml.dccContent("name", name);
  };
  identify("manufacturer", reference.serial, "serial number");
  identify("calibrationLaboratory", reference.certificate, "certificate number");
  identify("owner", reference.id, "the workshop's mark");
}

void writeCondition(DccXml& xml, const char* refType, const char* name, const std::optional<double>& value,
                    const char* unit) {
  const auto condition = xml.dcc("influenceCondition", {{"refType", QString::fromLatin1(refType)}});
  xml.dccContent("name", name);
  const auto dataElement = xml.dcc("data");
  const auto quantity = xml.dcc("quantity");
  if (!value) {
    xml.dccContent("noQuantity", "not recorded");
    return;
  }
  const auto real = xml.si("real");
  xml.siText("value", writeNumber(*value));
  xml.siText("unit", unit);
}

void writeConditions(DccXml& xml, const Check& check) {
  const auto conditions = xml.dcc("influenceConditions");
  writeCondition(xml, "basic_temperature", "Ambient temperature", check.temperatureC, "\\degreecelsius");
  writeCondition(xml, "basic_humidityRelative", "Relative humidity", check.humidityPercent, "\\percent");
}

void writeRealList(DccXml& xml, const std::vector<double>& values, std::string_view unit) {
  const auto real = xml.si("realListXMLList");
  xml.siText("valueXMLList", list(values));
  xml.siText("unitXMLList", unit);
}

// Torques: SI, and beside it the unit that they were taken in.
void writeTorques(DccXml& xml, const std::vector<StatedTorque>& torques) {
  std::vector<double> newtonMetres, own;
  for (const auto& torque : torques) {
    newtonMetres.push_back(torque.in(Unit::NewtonMetre));
    own.push_back(torque.value);
  }
  const auto unit = torques.front().unit;
  if (unit == Unit::NewtonMetre) {
    writeRealList(xml, own, dccUnit(unit));
    return;
  }
  const auto hybrid = xml.si("hybrid");
  writeRealList(xml, newtonMetres, dccUnit(Unit::NewtonMetre));
  writeRealList(xml, own, dccUnit(unit));
}

void writeNominal(DccXml& xml, const Check& check) {
  const auto quantity = xml.dcc("quantity", {{"refType", QStringLiteral("basic_nominalValue")}});
  xml.dccContent("name", "Set-point");
  std::vector<StatedTorque> targets;
  for (const auto& point : check.points) targets.push_back(point.target);
  writeTorques(xml, targets);
}

void writeDeviation(DccXml& xml, const Check& check) {
  const auto quantity = xml.dcc("quantity", {{"refType", QStringLiteral("basic_measurementError")}});
  xml.dccContent("name", "Mean deviation");
  {
    const auto real = xml.si("realListXMLList");
    xml.siText("valueXMLList", list(column(check, [](const auto& point) { return point.meanDeviation; })));
    xml.siText("unitXMLList", "\\percent");
    const auto univariate = xml.si("measurementUncertaintyUnivariateXMLList");
    const auto expanded = xml.si("expandedMUXMLList");
    xml.siText("valueExpandedMUXMLList",
               list(column(check, [](const auto& point) { return 2 * point.standardUncertainty; })));
    xml.siText("coverageFactorXMLList", "2");
    xml.siText("coverageProbabilityXMLList", "0.95");
    xml.siText("distributionXMLList", "normal");
  }
  const auto metaDataList = xml.dcc("measurementMetaData");
  const auto metaData = xml.dcc("metaData", {{"refType", QStringLiteral("basic_conformity")}});
  std::vector<std::string> verdicts;
  for (const auto& point : check.points) verdicts.push_back(dccVerdict(point.verdict));
  xml.dccText("conformityXMLList", fmt::format("{}", fmt::join(verdicts, " ")));
}

void writePercents(DccXml& xml, const char* name, const char* refType, const std::vector<double>& values) {
  const auto quantity =
      refType ? xml.dcc("quantity", {{"refType", QString::fromLatin1(refType)}}) : xml.dcc("quantity");
  xml.dccContent("name", name);
  writeRealList(xml, values, "\\percent");
}

void writeSummary(DccXml& xml, const Check& check) {
  const auto table = xml.dcc("list");
  xml.dccContent("name", "Results at each set-point");
  writeNominal(xml, check);
  writeDeviation(xml, check);
  const double limit = check.limitPercent;
  writePercents(xml, "Permissible deviation, lower", "basic_acceptanceLimitLower",
                column(check, [=](const auto&) { return -limit; }));
  writePercents(xml, "Permissible deviation, upper", "basic_acceptanceLimitUpper",
                column(check, [=](const auto&) { return limit; }));
  writePercents(xml, "Interval W' (ISO 6789-2)", nullptr,
                column(check, [](const auto& point) { return point.interval; }));
  writePercents(xml, "Probability of conformity (JCGM 106)", nullptr,
                column(check, [](const auto& point) { return 100 * point.conformityProbability; }));
  writeMethod(xml);
  writeConditions(xml, check);
}

void writeReadings(DccXml& xml, const Check& check, std::size_t index, const std::vector<double>& readings) {
  const auto& point = check.points[index];
  const auto table = xml.dcc("list");
  xml.dccContent("name", "Readings at " + writeTorque(point.target));
  {
    const auto quantity = xml.dcc("quantity", {{"refType", QStringLiteral("basic_referenceValue")}});
    xml.dccContent("name", "Readings of the reference standard");
    std::vector<StatedTorque> torques;
    for (const double reading : readings) torques.push_back({reading, point.target.unit});
    writeTorques(xml, torques);
  }
  writeMethod(xml);
  writeConditions(xml, check);
}

void writeResult(DccXml& xml, const Check& check, const std::vector<std::vector<double>>& readings) {
  const auto result = xml.dcc("result");
  xml.dccContent("name", fmt::format("{}, {}", phaseWords(check.phase), writeDirection(check.direction)));
  const auto dataElement = xml.dcc("data");
  writeSummary(xml, check);
  for (std::size_t i = 0; i < check.points.size(); ++i) {
    if (!readings[i].empty()) writeReadings(xml, check, i, readings[i]);
  }
}

}  // namespace

void writeMeasurement(DccXml& xml, const CertificateData& data, const DccReadings& readings) {
  const auto list = xml.dcc("measurementResults");
  const auto measurement = xml.dcc("measurementResult");
  xml.dccContent("name", "Check of tool " + data.tool.id);
  writeMethod(xml);
  writeReference(xml, data);
  writeConditions(xml, data.check);
  const auto results = xml.dcc("results");
  if (data.before) writeResult(xml, *data.before, readings.before);
  writeResult(xml, data.check, readings.check);
}

}  // namespace steadyturn
