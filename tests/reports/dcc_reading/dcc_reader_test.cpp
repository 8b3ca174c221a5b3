// Reading a reference standard's Digital Calibration Certificate, and refusing what is none.
#include "dcc_reader.h"

#include <gmock/gmock.h>

#include <QBuffer>
#include <QStringEncoder>
#include <QTcpServer>
#include <QTemporaryFile>

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
  auto tiny = nominal;
  auto huge = errors;
  EXPECT_THAT(refusalOf(certificate(tiny.replace("20 60", "1e-300 60") + huge.replace("0.05", "1e300"))),
              HasSubstr("beyond all measure"));
}

// XML 1.0, 4.1 and 4.6: characters by number and the five entities that need no declaration.
TEST(DccReader, ReadsCharactersByNumberAndTheFiveNamedOnes) {
  const auto read =
      reading(certificate(nominal + errors).replace("LAB-2026-17", "A&amp;B&#32;&lt;1&gt;&#x2F;&quot;2&apos;"));
  ASSERT_TRUE(read);
  EXPECT_EQ(read->number, "A&B <1>/\"2'");
}

// A certificate that names an entity as its number, the entity declared in a document type.
QByteArray withDocumentType(const QByteArray& type, const QByteArray& number = "&x;") {
  return certificate(nominal + errors).replace("LAB-2026-17", number).replace("?>\n", "?>\n" + type + "\n");
}

TEST(DccReader, NeverOpensWhatADocumentTypeNames) {
  QTemporaryFile secret;
  ASSERT_TRUE(secret.open());
  secret.write("kept to itself");
  secret.flush();
  const QByteArray file = secret.fileName().toUtf8();
  for (const auto& type : {"<!DOCTYPE d [<!ENTITY x SYSTEM \"file://" + file + "\">]>",
                           "<!DOCTYPE d [<!ENTITY x SYSTEM \"" + file + "\">]>",
                           "<!DOCTYPE d [<!ENTITY x PUBLIC \"-//X\" \"file://" + file + "\">]>",
                           "<!DOCTYPE d [<!ENTITY % y SYSTEM \"file://" + file + "\"> %y;]>",
                           "<!DOCTYPE d SYSTEM \"file://" + file + "\">",
                           "<!-- first --><!DOCTYPE d [<!ENTITY x SYSTEM \"file://" + file + "\">]>"}) {
    EXPECT_EQ(refusalOf(withDocumentType(type)), "a document type") << type.toStdString();
    const QString utf16 = QString::fromUtf8(withDocumentType(type).replace("UTF-8", "UTF-16"));
    EXPECT_EQ(refusalOf(QStringEncoder(QStringEncoder::Utf16, QStringEncoder::Flag::WriteBom)(utf16)),
              "a document type");
  }
}

TEST(DccReader, AsksNobodyOnTheNetwork) {
  QTcpServer server;
  ASSERT_TRUE(server.listen(QHostAddress::LocalHost));
  const QByteArray address = "http://127.0.0.1:" + QByteArray::number(server.serverPort()) + "/outside";
  EXPECT_EQ(refusalOf(withDocumentType("<!DOCTYPE d [<!ENTITY x SYSTEM \"" + address + "\">]>")), "a document type");
  EXPECT_EQ(refusalOf(withDocumentType("<!DOCTYPE d SYSTEM \"" + address + "\">")), "a document type");
  auto schema = certificate(nominal + errors);
  schema.replace("schemaVersion",
                 "xmlns:i=\"http://www.w3.org/2001/XMLSchema-instance\" i:schemaLocation=\"https://ptb.de/dcc " +
                     address + "\" schemaVersion");
  EXPECT_TRUE(reading(schema));
  EXPECT_FALSE(server.hasPendingConnections() || server.waitForNewConnection(0));
}

// Ten times ten times … "ha": by an entity of the text, of an attribute's default, and of the document type itself.
// It would be some gigabytes.
TEST(DccReader, NeverExpandsADeclaredEntity) {
  QByteArray laughs = "<!ENTITY a0 \"ha\">", parameters = "<!ENTITY % a0 \"<!ELEMENT e ANY>\">";
  for (int i = 1; i < 10; ++i) {
    const QByteArray name = "a" + QByteArray::number(i), before = "a" + QByteArray::number(i - 1);
    laughs += "<!ENTITY " + name + " \"" + ("&" + before + ";").repeated(10) + "\">";
    parameters += "<!ENTITY % " + name + " \"" + ("&#37;" + before + ";").repeated(10) + "\">";
  }
  EXPECT_EQ(refusalOf(withDocumentType("<!DOCTYPE d [" + laughs + "]>", "&a9;")), "a document type");
  EXPECT_EQ(refusalOf(withDocumentType("<!DOCTYPE d [<!ENTITY x \"ha\">]>")), "a document type") << "not even once";
  EXPECT_NE(refusalOf(withDocumentType("<!DOCTYPE d [" + laughs + "<!ATTLIST d x CDATA \"&a9;\">]>")), "taken");
  EXPECT_NE(refusalOf(withDocumentType("<!DOCTYPE d [" + parameters + "%a9;]>")), "taken");
  EXPECT_THAT(refusalOf(withDocumentType("", "&undeclared;")), HasSubstr("undeclared"));
  // Nothing, a thousand million times: no limit on an entity's length ends that.
  laughs.replace("\"ha\"", "\"\"");
  EXPECT_EQ(refusalOf(withDocumentType("<?first ?> <!-- then -->\n<!DOCTYPE d [" + laughs +
                                       "<!ATTLIST d x CDATA \"&a9;\">]>")),
            "a document type");
}

TEST(DccReader, RefusesEndlessNesting) {
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
