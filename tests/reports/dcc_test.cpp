// Structure and values of the Digital Calibration Certificate; the schema itself only where DCC_SCHEMA_DIR names the
// folder that holds dcc-3.3.0.xsd and its catalog.
#include "dcc.h"

#include <gmock/gmock.h>

#include <QBuffer>
#include <QDate>
#include <QProcess>
#include <QProcessEnvironment>
#include <QTemporaryFile>
#include <QXmlStreamReader>

#include "demo_reports.h"

namespace steadyturn {
namespace {

using testing::Contains;
using testing::ElementsAre;
using testing::HasSubstr;

QByteArray xmlOf(const CertificateData& data) {
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  EXPECT_TRUE(writeDcc(data, buffer));
  return buffer.data();
}

// Texts of all elements of that name, in order.
std::vector<std::string> textsOf(const QByteArray& xml, QStringView element) {
  std::vector<std::string> texts;
  QXmlStreamReader reader(xml);
  while (!reader.atEnd()) {
    if (reader.readNext() == QXmlStreamReader::StartElement && reader.name() == element) {
      texts.push_back(reader.readElementText(QXmlStreamReader::IncludeChildElements).simplified().toStdString());
    }
  }
  EXPECT_FALSE(reader.hasError()) << reader.errorString().toStdString();
  return texts;
}

CertificateData imperialCertificate() {
  auto data = test::demoCertificate();
  for (auto* check : {&data.check, &*data.before}) {
    for (auto& point : check->points) point.target.unit = Unit::PoundForceFoot;
  }
  data.tool.unit = Unit::PoundForceFoot;
  return data;
}

TEST(Dcc, CarriesTheCoreDataOfTheCertificate) {
  const auto xml = xmlOf(test::demoCertificate());
  EXPECT_THAT(textsOf(xml, u"uniqueIdentifier"), ElementsAre("C-42"));
  EXPECT_THAT(textsOf(xml, u"beginPerformanceDate"), ElementsAre("2026-03-14"));
  EXPECT_THAT(textsOf(xml, u"endPerformanceDate"), ElementsAre("2026-03-14"));
  EXPECT_THAT(textsOf(xml, u"issueDate"), ElementsAre("2026-03-15"));
  EXPECT_THAT(textsOf(xml, u"release").front(), testing::MatchesRegex("v[0-9]+\\.[0-9]+\\.[0-9]+"));
  EXPECT_THAT(textsOf(xml, u"countryCodeISO3166_1"), ElementsAre("ZZ"));
  auto known = test::demoCertificate();
  known.country = "IE";
  EXPECT_THAT(textsOf(xmlOf(known), u"countryCodeISO3166_1"), ElementsAre("IE"));
  EXPECT_THAT(textsOf(xml, u"value"), Contains("HT-20419"));
  EXPECT_THAT(textsOf(xml, u"value"), Contains("K-2026-0117"));
}

TEST(Dcc, CarriesVerdictsLimitsAndReadings) {
  const auto xml = xmlOf(test::demoCertificate());
  EXPECT_THAT(textsOf(xml, u"conformity"), ElementsAre("pass"));
  EXPECT_THAT(textsOf(xml, u"conformityXMLList"), ElementsAre("fail fail fail", "pass pass pass"));
  const auto values = textsOf(xml, u"valueXMLList");
  EXPECT_THAT(values, Contains("20 60 100"));
  EXPECT_THAT(values, Contains("-4 -4 -4"));
  EXPECT_THAT(values, Contains("101.2 100.8 101 101.4 100.9"));
  EXPECT_THAT(textsOf(xml, u"distributionXMLList"), Contains("normal"));
  // By hand: w at 60 N·m is the root of 0.2² + (0.5/√3/60·100)² + (0.3/2√3)² + (0.2/2√3)² + s²/5, s = 0.317 → W
  // = 1.100.
  const auto expanded = textsOf(xml, u"valueExpandedMUXMLList");
  ASSERT_EQ(expanded.size(), 2u);
  EXPECT_NEAR(QString::fromStdString(expanded[1]).split(' ')[1].toDouble(), 1.100, 0.001);
}

TEST(Dcc, GivesOtherUnitsBesideSi) {
  const auto xml = xmlOf(imperialCertificate());
  EXPECT_THAT(textsOf(xml, u"nonSIUnit"), ElementsAre("|lbf.ft"));
  // NIST SP 811, App. B: exact.
  EXPECT_THAT(textsOf(xml, u"nonSIDefinition").front(), HasSubstr("1 |lbf.ft = 1.3558179483314"));
  EXPECT_THAT(textsOf(xml, u"unitXMLList"), Contains("\\newton\\metre"));
  EXPECT_THAT(textsOf(xml, u"unitXMLList"), Contains("|lbf.ft"));
}

TEST(Dcc, KeepsOutWhatXmlCannotHold) {
  auto data = test::demoCertificate();
  data.check.note = std::string("a\x01<b>&\"");
  EXPECT_THAT(textsOf(xmlOf(data), u"declaration"), Contains("a\uFFFD<b>&\""));
}

TEST(Dcc, RefusesAReadingThatIsNoNumber) {
  auto data = test::demoCertificate();
  data.check.points[0].readings[0] = "1O.5";
  QBuffer buffer;
  buffer.open(QIODevice::WriteOnly);
  EXPECT_FALSE(writeDcc(data, buffer));
  EXPECT_EQ(buffer.size(), 0);
}

TEST(Dcc, EveryListNamesItsMethodAndItsConditions) {
  // Asked for by published rules beyond the schema.
  QXmlStreamReader reader(xmlOf(test::demoCertificate()));
  int lists = 0, methods = 0, conditions = 0;
  while (!reader.atEnd()) {
    if (reader.readNext() != QXmlStreamReader::StartElement) continue;
    lists += reader.name() == u"list";
    methods += reader.name() == u"usedMethods";
    conditions += reader.name() == u"influenceConditions";
  }
  EXPECT_EQ(lists, 2 * (1 + 3));
  EXPECT_EQ(methods, lists + 1);
  EXPECT_EQ(conditions, lists + 1);
}

TEST(Dcc, IsValidByTheSchema) {
  const auto folder = qEnvironmentVariable("DCC_SCHEMA_DIR");
  if (folder.isEmpty())
    GTEST_SKIP() << "skipped: DCC_SCHEMA_DIR does not name the folder of dcc-3.3.0.xsd and catalog.xml";
  auto bare = test::demoCertificate();
  bare.reference.reset();
  bare.before.reset();
  bare.dueDate.reset();
  bare.shopPlace.clear();
  bare.tool.serial.clear();
  bare.tool.maker.clear();
  bare.tool.description.clear();
  bare.check.by.clear();
  bare.check.temperatureC.reset();
  bare.check.humidityPercent.reset();
  auto corrected = test::demoCertificate();
  corrected.check.corrects = 40;
  corrected.check.correctedBy = 50;
  corrected.check.note = "worn grip";
  corrected.country = "IE";
  for (const auto& data : {test::demoCertificate(), imperialCertificate(), bare, corrected}) {
    QTemporaryFile file;
    ASSERT_TRUE(file.open());
    ASSERT_TRUE(writeDcc(data, file));
    file.close();
    QProcess process;
    auto environment = QProcessEnvironment::systemEnvironment();
    environment.insert(QStringLiteral("XML_CATALOG_FILES"), folder + QStringLiteral("/catalog.xml"));
    process.setProcessEnvironment(environment);
    process.start(QStringLiteral("xmllint"),
                  {QStringLiteral("--nonet"), QStringLiteral("--noout"), QStringLiteral("--schema"),
                   folder + QStringLiteral("/dcc-3.3.0.xsd"), file.fileName()});
    ASSERT_TRUE(process.waitForFinished()) << "xmllint is needed (Debian: libxml2-utils)";
    const auto said = process.readAllStandardError().toStdString();
    EXPECT_EQ(process.exitCode(), 0) << said;
    EXPECT_THAT(said, testing::Not(HasSubstr("Skipping the import"))) << "the catalog was not found";
  }
}

TEST(Dcc, NamesThePrintedCertificateByItsHash) {
  auto data = test::demoCertificate();
  const auto mentions = Contains(HasSubstr("SHA-256"));
  EXPECT_THAT(textsOf(xmlOf(data), u"declaration"), testing::Not(mentions));
  data.printed = {.sha256 = std::string(64, 'a'), .at = "2026-03-15T09:26:53.589Z"};
  EXPECT_THAT(textsOf(xmlOf(data), u"declaration"), Contains(HasSubstr("SHA-256 " + std::string(64, 'a'))));
}

}  // namespace
}  // namespace steadyturn
