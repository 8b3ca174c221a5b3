// The two halves of a Digital Calibration Certificate.
#pragma once

#include "certificate.h"
#include "dcc_xml.h"

namespace steadyturn {

void writeAdministration(DccXml& xml, const CertificateData& data);
// `readings` are the stored ones of data.check, and of data.before, as numbers: point by point.
struct DccReadings {
  std::vector<std::vector<double>> check, before;
};
void writeMeasurement(DccXml& xml, const CertificateData& data, const DccReadings& readings);

// "pass", "fail", "conditionalPass", "conditionalFail": the schema's spelling.
std::string dccVerdict(Verdict verdict);
// "\newton\metre", "|lbf.ft".
std::string dccUnit(Unit unit);

}  // namespace steadyturn
