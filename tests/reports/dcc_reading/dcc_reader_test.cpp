// Reading a reference standard's Digital Calibration Certificate, and refusing what is none.
#include "dcc_reader.h"

#include <gmock/gmock.h>

#include <QBuffer>

#include "dcc.h"
#include "demo_reports.h"

namespace steadyturn {
namespace {

using testing::HasSubstr;

Result<ReferenceCertificate> reading(QByteArray bytes) {
  QBuffer buffer(&bytes);
  buffer.open(QIODevice::ReadOnly);
  return readDcc(buffer);
}

// As the schema DCC 3.3.0 with D-SI 2.2.1 has it; an invented laboratory and an invented transducer.
QByteArray certificate(const QByteArray& results) {
  return R"(<?xml version="1.0" encoding="UTF-8"?>
<dcc:digitalCalibrationCertificate xmlns:dcc="https://ptb.de/dcc" xmlns:si="https://ptb.de/si" schemaVersion="3.3.0">
  <dcc:administrativeData>
    <dcc:coreData>
      <dcc:uniqueIdentifier>LAB-2026-17</dcc:uniqueIdentifier>
      <dcc:beginPerformanceDate>2026-02-02</dcc:beginPerformanceDate>
      <dcc:endPerformanceDate>2026-02-03</dcc:endPerformanceDate>
    </dcc:coreData>
    <dcc:items><dcc:item><dcc:name><dcc:content>Torque transducer, 100 N·m</dcc:content></dcc:name>
      <dcc:identifications><dcc:identification refType="basic_serialNo"><dcc:issuer>manufacturer</dcc:issuer>
      <dcc:value>T-0815</dcc:value></dcc:identification><dcc:identification><dcc:issuer>owner</dcc:issuer>
      <dcc:value>REF-9</dcc:value></dcc:identification></dcc:identifications></dcc:item></dcc:items>
    <dcc:calibrationLaboratory><dcc:contact><dcc:name><dcc:content>Torque Laboratory</dcc:content></dcc:name>
      </dcc:contact></dcc:calibrationLaboratory>
  </dcc:administrativeData>
  <dcc:measurementResults><dcc:measurementResult>
    <dcc:influenceConditions><dcc:influenceCondition><dcc:data><dcc:quantity><si:real><si:value>20.4</si:value>
      <si:unit>\degreecelsius</si:unit></si:real></dcc:quantity></dcc:data></dcc:influenceCondition>
    </dcc:influenceConditions>
    <dcc:results><dcc:result><dcc:data><dcc:list>)" +
         results + R"(</dcc:list></dcc:data></dcc:result></dcc:results>
  </dcc:measurementResult></dcc:measurementResults>
</dcc:digitalCalibrationCertificate>)";
}

const QByteArray nominal = R"(<dcc:quantity refType="basic_nominalValue"><si:realListXMLList>
  <si:valueXMLList>20 60 100</si:valueXMLList><si:unitXMLList>\newton\metre</si:unitXMLList></si:realListXMLList>
  </dcc:quantity>)";
const QByteArray errors = R"(<dcc:quantity refType="basic_measurementError"><si:realListXMLList>
  <si:valueXMLList>0.02 -0.09 0.10</si:valueXMLList><si:unitXMLList>\newton\metre</si:unitXMLList>
  <si:measurementUncertaintyUnivariateXMLList><si:expandedMUXMLList>
  <si:valueExpandedMUXMLList>0.05 0.12 0.15</si:valueExpandedMUXMLList><si:coverageFactorXMLList>2.13 2 2</si:coverageFactorXMLList>
  <si:coverageProbabilityXMLList>0.95</si:coverageProbabilityXMLList></si:expandedMUXMLList>
  </si:measurementUncertaintyUnivariateXMLList></si:realListXMLList></dcc:quantity>)";

TEST(DccReader, TakesWhatABenchNeedsOfAStandard) {
  const auto read = reading(certificate(nominal + errors));
  ASSERT_TRUE(read) << read.error().front().found;
  EXPECT_EQ(read->number, "LAB-2026-17");
  EXPECT_EQ(read->laboratory, "Torque Laboratory");
  EXPECT_EQ(read->description, "Torque transducer, 100 N·m");
  EXPECT_EQ(read->serial, "T-0815");
  EXPECT_EQ(writeDate(read->calibrated.value()), "2026-02-03");
  // By hand: 0.05 / 20 = 0.25 % is the largest of 0.25, 0.2 and 0.15; −0.09 / 60 = −0.15 % the largest error in size.
  EXPECT_NEAR(read->expandedUncertaintyPercent, 0.25, 1e-12);
  EXPECT_EQ(read->coverageFactor, 2.13);
  EXPECT_NEAR(read->errorPercent, -0.15, 1e-12);
  EXPECT_EQ(read->low->value, 20);
  EXPECT_EQ(read->high->value, 100);
  EXPECT_EQ(read->values, 3);
}

TEST(DccReader, KnowsPercentPrefixesAndOneUncertaintyForAll) {
  const auto read = reading(certificate(R"(<dcc:quantity refType="basic_referenceValue"><si:realListXMLList>
    <si:valueXMLList>500 2000</si:valueXMLList><si:unitXMLList>\centi\newton\metre</si:unitXMLList></si:realListXMLList>
    </dcc:quantity><dcc:quantity><si:realListXMLList><si:valueXMLList>0.1 -0.3</si:valueXMLList>
    <si:unitXMLList>\percent</si:unitXMLList><si:measurementUncertaintyUnivariateXMLList><si:expandedMUXMLList>
    <si:valueExpandedMUXMLList>0.4</si:valueExpandedMUXMLList><si:coverageFactorXMLList>2</si:coverageFactorXMLList>
    </si:expandedMUXMLList></si:measurementUncertaintyUnivariateXMLList></si:realListXMLList></dcc:quantity>)"));
  ASSERT_TRUE(read);
  EXPECT_DOUBLE_EQ(read->expandedUncertaintyPercent, 0.4);
  EXPECT_DOUBLE_EQ(read->low->value, 5);
  EXPECT_DOUBLE_EQ(read->high->value, 20);
}

// The product's own certificate comes back with the figures it was written from.
TEST(DccReader, ReadsTheCertificateThisProgramWrites) {
  QByteArray bytes;
  QBuffer out(&bytes);
  out.open(QIODevice::WriteOnly);
  const auto written = test::demoCertificate();
  ASSERT_TRUE(writeDcc(written, out));
  const auto read = reading(bytes);
  ASSERT_TRUE(read) << read.error().front().found;
  EXPECT_EQ(read->number, written.number);
  double largest = 0;
  for (const auto* check : {&written.check, &*written.before}) {
    for (const auto& point : check->points) largest = std::max(largest, 2 * point.standardUncertainty);
  }
  EXPECT_NEAR(read->expandedUncertaintyPercent, largest, 1e-12);
}

std::string refusalOf(const QByteArray& bytes) {
  const auto read = reading(bytes);
  if (read) return "taken";
  EXPECT_EQ(read.error().front().field, "certificate");
  return read.error().front().found;
}

TEST(DccReader, RefusesWhatIsNoCertificate) {
  EXPECT_THAT(refusalOf("not xml"), HasSubstr("line 1"));
  EXPECT_EQ(refusalOf("<other/>"), "another kind of document");
  EXPECT_THAT(refusalOf(certificate(nominal + errors).chopped(40)), HasSubstr("line"));
  EXPECT_THAT(refusalOf(certificate(nominal)), HasSubstr("no expanded uncertainty"));
  EXPECT_THAT(refusalOf(certificate("<dcc:quantity><si:real><si:value>1O</si:value></si:real></dcc:quantity>")),
              HasSubstr("not a number"));
}

TEST(DccReader, RefusesEntitiesAndEndlessNesting) {
  EXPECT_EQ(refusalOf(R"(<?xml version="1.0"?><!DOCTYPE d [<!ENTITY x SYSTEM "file:///etc/passwd">]>)" +
                      certificate(nominal + errors)),
            "a document type");
  QByteArray deep, closing;
  for (int i = 0; i < 100'000; ++i) {
    deep += "<dcc:list>";
    closing += "</dcc:list>";
  }
  EXPECT_THAT(refusalOf(certificate(deep + closing)), HasSubstr("nested too deeply"));
  deep.replace("list", "name");
  closing.replace("list", "name");
  EXPECT_NE(refusalOf(certificate(deep + closing)), "taken");
}

}  // namespace
}  // namespace steadyturn
