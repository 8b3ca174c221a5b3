#include <fmt/format.h>

#include <algorithm>

#include "certificate_words.h"
#include "dcc_parts.h"

namespace steadyturn {
namespace {

void writeSoftware(DccXml& xml) {
  const auto list = xml.dcc("dccSoftware");
  const auto software = xml.dcc("software");
  xml.dccContent("name", "Steadyturn");
  // Published rules want a release of this shape.
  xml.dccText("release", "v" STEADYTURN_RELEASE);
  xml.dccText("type", "application");
}

void writeCoreData(DccXml& xml, const CertificateData& data) {
  const auto core = xml.dcc("coreData");
  xml.dccText("countryCodeISO3166_1", data.country.empty() ? "ZZ" : data.country);
  xml.dccText("usedLangCodeISO639_1", "en");
  xml.dccText("mandatoryLangCodeISO639_1", "en");
  xml.dccText("uniqueIdentifier", data.number);
  xml.dccText("beginPerformanceDate", writeDate(data.check.date));
  xml.dccText("endPerformanceDate", writeDate(data.check.date));
  xml.dccText("performanceLocation", "laboratory");
  xml.dccText("issueDate", writeDate(data.issued));
}

void writeIdentification(DccXml& xml, const char* issuer, std::string_view value, const char* name) {
  const auto identification = xml.dcc("identification");
  xml.dccText("issuer", issuer);
  xml.dccText("value", value);
  xml.dccContent("name", name);
}

void writeItem(DccXml& xml, const Tool& tool) {
  const auto items = xml.dcc("items");
  const auto item = xml.dcc("item");
  xml.dccContent("name", tool.description.empty() ? std::string(describe(tool.kind)) : tool.description);
  xml.dccContent("description", fmt::format("Hand torque tool, type {}, class {}: {} (ISO 6789-1:2017); maximum {}",
                                            writeType(tool.kind.type), writeClass(tool.kind.cls), describe(tool.kind),
                                            writeTorque(tool.maximumTorque())));
  if (!tool.maker.empty()) {
    const auto maker = xml.dcc("manufacturer");
    xml.dccContent("name", tool.maker);
  }
  const auto identifications = xml.dcc("identifications");
  if (!tool.serial.empty()) writeIdentification(xml, "manufacturer", tool.serial, "serial number");
  writeIdentification(xml, "owner", tool.id, "the workshop's mark");
}

// The workshop is laboratory and customer alike.
void writeContact(DccXml& xml, const char* element, const CertificateData& data) {
  const auto contact = xml.dcc(element);
  xml.dccContent("name", data.shopName);
  const auto location = xml.dcc("location");
  if (!data.country.empty()) xml.dccText("countryCode", data.country);
  xml.dccContent("further", data.shopPlace);
}

void writePerson(DccXml& xml, const Check& check) {
  const auto persons = xml.dcc("respPersons");
  const auto responsible = xml.dcc("respPerson");
  {
    const auto person = xml.dcc("person");
    xml.dccContent("name", check.by);
  }
  xml.dccText("role", "checked the tool");
  xml.dccText("mainSigner", "true");
}

void writeDeclaration(DccXml& xml, const char* name, std::string_view text) {
  const auto statement = xml.dcc("statement");
  xml.dccContent("name", name);
  xml.dccContent("declaration", text);
}

void writeConformity(DccXml& xml, const Check& check) {
  const auto statement = xml.dcc("statement", {{"refType", QStringLiteral("basic_conformity")}});
  xml.dccContent("name", "Statement of conformity");
  xml.dccText("norm", "ISO 6789-1:2017");
  xml.dccText("norm", "ILAC-G8:09/2019");
  xml.dccContent("declaration", decisionRuleWords(check));
  xml.dccText("conformity", dccVerdict(check.verdict));
}

void writeUnitDefinitions(DccXml& xml, const CertificateData& data) {
  std::vector<Unit> units;
  const auto collect = [&](const Check& check) {
    for (const auto& point : check.points) {
      const auto unit = point.target.unit;
      if (unit != Unit::NewtonMetre && std::ranges::find(units, unit) == units.end()) units.push_back(unit);
    }
  };
  collect(data.check);
  if (data.before) collect(*data.before);
  for (const auto unit : units) {
    const auto statement = xml.dcc("statement");
    xml.dccText("nonSIDefinition",
                fmt::format("1 {} = {} \\newton\\metre", dccUnit(unit), writeNumber(newtonMetresPer(unit))));
    xml.dccText("nonSIUnit", dccUnit(unit));
  }
}

void writeStatements(DccXml& xml, const CertificateData& data) {
  const auto& check = data.check;
  const auto statements = xml.dcc("statements");
  writeConformity(xml, check);
  writeDeclaration(xml, "Probability of conformity", conformityProbabilityWords(check));
  writeDeclaration(
      xml, "Scope",
      "The results apply to the item as checked. This workshop's own bench; no accreditation is claimed.");
  if (data.dueDate && check.verdict != Verdict::Fail) {
    const auto statement = xml.dcc("statement");
    xml.dccContent("name", "Next check due");
    xml.dccContent("declaration", "The workshop's own date, for its own use.");
    xml.dccText("date", writeDate(*data.dueDate));
  }
  if (check.corrects) {
    writeDeclaration(xml, "Replaces", fmt::format("check {}: {}", *check.corrects, check.correctionReason));
  }
  if (check.correctedBy)
    writeDeclaration(xml, "No longer valid", fmt::format("replaced by check {}", *check.correctedBy));
  if (!check.note.empty()) writeDeclaration(xml, "Condition and remarks", check.note);
  if (data.printed) {
    writeDeclaration(xml, "Printed certificate",
                     fmt::format("PDF issued {}, SHA-256 {}", data.printed->at, data.printed->sha256));
  }
  writeUnitDefinitions(xml, data);
}

}  // namespace

void writeAdministration(DccXml& xml, const CertificateData& data) {
  const auto administration = xml.dcc("administrativeData");
  writeSoftware(xml);
  writeCoreData(xml, data);
  writeItem(xml, data.tool);
  {
    const auto laboratory = xml.dcc("calibrationLaboratory");
    writeContact(xml, "contact", data);
  }
  writePerson(xml, data.check);
  writeContact(xml, "customer", data);
  writeStatements(xml, data);
}

}  // namespace steadyturn
