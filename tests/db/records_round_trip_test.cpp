// Every field of every record comes back as it went in. The structured bindings name all fields on purpose: a field
// that is added to a record and not to its table does not compile here.
#include "sample_records.h"
#include "shop_fixture.h"

namespace steadyturn {
namespace {

// Copies: what a structured binding names may be a temporary's.
template <typename... Fields>
auto values(const Fields&... fields) {
  return std::tuple<Fields...>(fields...);
}

auto fields(const Tool& tool) {
  const auto& [id, description, maker, serial, kind, unit, minimum, maximum, resolution, drive, days, limit, status,
               reason] = tool;
  return values(id, description, maker, serial, kind, unit, minimum, maximum, resolution, drive, days, limit, status,
                reason);
}

auto fields(const Reference& reference) {
  const auto& [id, description, serial, certificate, calibrated, due, expanded, factor, error] = reference;
  return values(id, description, serial, certificate, calibrated, due, expanded, factor, error);
}

auto fields(const Fastener& fastener) {
  const auto& [id, assembly, component, thread, propertyClass, material, drive, unit, target, low, high, angle, limit,
               seal, renew, lubrication, seat, source, revision, number, reason, stages, sequence, basis, enteredBy,
               approvedBy, approvedOn] = fastener;
  return values(id, assembly, component, thread, propertyClass, material, drive, unit, target, low, high, angle,
                limit, seal, renew, lubrication, seat, source, revision, number, reason, stages, sequence, basis,
                enteredBy, approvedBy, approvedOn);
}

auto fields(const CheckPoint& point) {
  const auto& [target, readings, mean, repeatability, uncertainty, interval, probability, verdict] = point;
  return values(target, readings, mean, repeatability, uncertainty, interval, probability, verdict);
}

auto fields(const ReferenceUncertainty& reference) {
  const auto& [expanded, factor, error] = reference;
  return values(expanded, factor, error);
}

auto fields(const VariationSpans& spans) {
  const auto& [reproducibility, drive, interface, loadingPoint] = spans;
  return values(reproducibility, drive, interface, loadingPoint);
}

auto fields(const Check& check) {
  const auto& [id, tool, date, phase, reference, by, direction, temperature, humidity, note, limit, rule, uncertainty,
               variation, verdict, points, corrects, correctionReason, correctedBy] = check;
  std::vector<decltype(fields(points.front()))> eachPoint;
  for (const auto& point : points) eachPoint.push_back(fields(point));
  return values(id, tool, date, phase, reference, by, direction, temperature, humidity, note, limit, rule,
                fields(uncertainty), fields(variation), verdict, eachPoint, corrects, correctionReason, correctedBy);
}

auto fields(const Tightening& tightening) {
  const auto& [id, job, vehicle, date, fastener, number, tool, setting, unit, seat, by, stages, renewed] = tightening;
  return values(id, job, vehicle, date, fastener, number, tool, setting, unit, seat, by, stages, renewed);
}

class RoundTrip : public ShopTest {
 protected:
  void SetUp() override {
    ShopTest::SetUp();
    write([](OpenShop& to) {
      for (const auto& tool : {fullTool(), bareTool()}) to.tools.add(tool, stamp);
      for (const auto& reference : {fullReference(), bareReference()}) to.references.add(reference, stamp);
      for (const auto& fastener : {fullFastener(), bareFastener()}) to.fasteners.add(fastener, stamp);
    });
  }
};

TEST_F(RoundTrip, Tools) {
  for (const auto& tool : {fullTool(), bareTool()}) {
    const auto found = shop().tools.find(tool.id);
    ASSERT_TRUE(found);
    EXPECT_EQ(fields(*found), fields(tool));
  }
  EXPECT_FALSE(shop().tools.find("TW-99"));
  const auto all = shop().tools.all();
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(all[0].id, "TW-01");
  EXPECT_EQ(fields(all[1]), fields(fullTool()));
}

TEST_F(RoundTrip, ToolStatusIsAnEventAndTheToolsPresent) {
  write([](OpenShop& to) { to.tools.setStatus("TW-07", ToolStatus::Retired, "worn out", day(2026, 3, 1), stamp); });
  auto expected = fullTool();
  expected.status = ToolStatus::Retired;
  expected.statusReason = "worn out";
  EXPECT_EQ(fields(*shop().tools.find("TW-07")), fields(expected));
  EXPECT_EQ(shop().count("SELECT COUNT(*) FROM tool_status_event WHERE tool = 'TW-07' AND date = '2026-03-01'"), 1);
}

TEST_F(RoundTrip, References) {
  EXPECT_EQ(fields(*shop().references.find("REF-1")), fields(fullReference()));
  EXPECT_EQ(fields(*shop().references.find("REF-0")), fields(bareReference()));
  EXPECT_EQ(shop().references.all().size(), 2U);
  EXPECT_FALSE(shop().references.find(""));
}

TEST_F(RoundTrip, FastenersAndTheirRevisions) {
  auto second = fullFastener();
  second.number = 2;
  second.target = 19;
  second.revisionReason = "the maker's sheet changed";
  write([&](OpenShop& to) { to.fasteners.add(second, stamp); });
  EXPECT_EQ(fields(*shop().fasteners.find(second.id)), fields(second));
  EXPECT_EQ(fields(*shop().fasteners.find(second.id, 1)), fields(fullFastener()));
  EXPECT_FALSE(shop().fasteners.find(second.id, 3));
  ASSERT_EQ(shop().fasteners.revisions(second.id).size(), 2U);
  EXPECT_EQ(fields(shop().fasteners.revisions(second.id)[1]), fields(second));
  const auto all = shop().fasteners.all();
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(fields(all[0]), fields(bareFastener()));
  EXPECT_EQ(all[1].number, 2);
}

TEST_F(RoundTrip, ChecksAndTheirCorrection) {
  auto full = fullCheck();
  auto bare = bareCheck();
  auto correction = fullCheck();
  write([&](OpenShop& to) {
    full.id = to.checks.add(full, stamp);
    bare.id = to.checks.add(bare, stamp);
    correction.corrects = full.id;
    correction.correctionReason = "read in the wrong unit";
    correction.id = to.checks.add(correction, stamp);
  });
  full.correctedBy = correction.id;
  EXPECT_EQ(fields(*shop().checks.find(full.id)), fields(full));
  EXPECT_EQ(fields(*shop().checks.find(bare.id)), fields(bare));
  EXPECT_EQ(fields(*shop().checks.find(correction.id)), fields(correction));
  EXPECT_FALSE(shop().checks.find(99));

  const auto ofTool = shop().checks.ofTool("TW-07");
  ASSERT_EQ(ofTool.size(), 2U);
  EXPECT_EQ(fields(ofTool[0]), fields(full));
  EXPECT_EQ(shop().checks.newest(1).at(0).id, correction.id);

  std::vector<std::int64_t> visited;
  shop().checks.forEach([&](const Check& check) {
    visited.push_back(check.id);
    return true;
  });
  EXPECT_EQ(visited, (std::vector{bare.id, correction.id}));
}

TEST_F(RoundTrip, AVisitEndsWhenTheVisitorSaysSo) {
  write([](OpenShop& to) {
    for (int count = 0; count < 3; ++count) to.checks.add(bareCheck(), stamp);
  });
  int visits = 0;
  shop().checks.forEach([&](const Check&) { return ++visits < 2; });
  EXPECT_EQ(visits, 2);
  // No read is left open that would keep a copy or an upgrade waiting.
  write([](OpenShop& to) { to.checks.add(bareCheck(), stamp); });
}

TEST_F(RoundTrip, ACheckExistsUntilItIsCorrectedAway) {
  std::int64_t id = 0;
  write([&](OpenShop& to) { id = to.checks.add(bareCheck(), stamp); });
  EXPECT_TRUE(shop().checks.exists("TW-01", day(2024, 2, 29), Phase::AsFound));
  EXPECT_FALSE(shop().checks.exists("TW-01", day(2024, 2, 29), Phase::AsLeft));
  write([&](OpenShop& to) {
    auto moved = bareCheck();
    moved.date = day(2024, 3, 1);
    moved.corrects = id;
    to.checks.add(moved, stamp);
  });
  EXPECT_FALSE(shop().checks.exists("TW-01", day(2024, 2, 29), Phase::AsFound));
}

TEST_F(RoundTrip, Tightenings) {
  auto full = fullTightening();
  auto bare = bareTightening();
  EXPECT_FALSE(shop().tightenings.exists(full));
  write([&](OpenShop& to) {
    full.id = to.tightenings.add(full, stamp);
    bare.id = to.tightenings.add(bare, stamp);
  });
  EXPECT_TRUE(shop().tightenings.exists(full));
  EXPECT_TRUE(shop().tightenings.exists(bare));
  auto unseated = bare;
  unseated.seatChecked = false;
  EXPECT_FALSE(shop().tightenings.exists(unseated));

  const auto all = shop().tightenings.all();
  ASSERT_EQ(all.size(), 2U);
  EXPECT_EQ(fields(all[0]), fields(bare));
  EXPECT_EQ(fields(all[1]), fields(full));
  EXPECT_EQ(shop().tightenings.ofTool("TW-07", full.date, full.date).size(), 1U);
  EXPECT_EQ(shop().tightenings.ofTool("TW-07", day(2020, 1, 1), day(2026, 3, 1)).size(), 0U);
  EXPECT_EQ(shop().tightenings.ofJob("J-2026-015").at(0).id, bare.id);
}

TEST_F(RoundTrip, AJobIsOfOneVehicle) {
  auto first = fullTightening();
  write([&](OpenShop& to) { to.tightenings.add(first, stamp); });
  Transaction transaction(shop().database);
  first.vehicle = "sweeper 4";
  try {
    shop().tightenings.add(first, stamp);
    FAIL() << "a second vehicle was taken";
  } catch (const StoreError& error) {
    EXPECT_EQ(error.problem().kind, ProblemKind::Conflict);
    EXPECT_EQ(error.problem().found, "sweeper 4");
  }
}

TEST_F(RoundTrip, SettingsAndImportedFiles) {
  EXPECT_FALSE(shop().shop.setting("name"));
  write([](OpenShop& to) {
    to.shop.set("name", "Depot", stamp);
    to.shop.set("name", "Depot Nord", stamp);
    to.shop.rememberFile("checks", "ab12", 5, stamp);
    to.shop.rememberFile("checks", "ab12", 5, stamp);  // taken in again, on demand
  });
  EXPECT_EQ(shop().shop.setting("name"), "Depot Nord");
  EXPECT_TRUE(shop().shop.fileWasImported("checks", "ab12"));
  EXPECT_FALSE(shop().shop.fileWasImported("tools", "ab12"));
}

TEST_F(RoundTrip, TextOfAnyKind) {
  std::string zeros("before");
  zeros.push_back('\0');
  zeros += "after";
  const std::string texts[] = {zeros,
                               "\xF0\x9F\x94\xA7 and \xE2\x80\xAE"
                               "rtl",
                               "\xD9\x85\xD9\x81\xD8\xAA\xD8\xA7\xD8\xAD",
                               std::string(3'000'000, 'x'),
                               "'; DROP TABLE tool; --",
                               "%s ? :name @x $y"};
  int number = 0;
  for (const auto& text : texts) {
    auto tool = bareTool();
    tool.id = "TEXT-" + std::to_string(++number);
    tool.description = text;
    if (hasTestServer() && text == zeros) {
      // PostgreSQL's text holds no zero byte (its 8.3): refused, with nothing written.
      EXPECT_THROW(write([&](OpenShop& to) { to.tools.add(tool, stamp); }), StoreError);
      EXPECT_FALSE(shop().tools.find(tool.id));
      continue;
    }
    write([&](OpenShop& to) { to.tools.add(tool, stamp); });
    EXPECT_EQ(shop().tools.find(tool.id)->description, text) << tool.id;
  }
}

// Unicode Standard Annex 15: U+0065 U+0301 and U+00E9 are one character; form C is the second.
TEST_F(RoundTrip, TheSameWordInTwoSpellingsIsOneTool) {
  auto tool = bareTool();
  tool.id = "Cle\xCC\x81";
  write([&](OpenShop& to) { to.tools.add(tool, stamp); });
  ASSERT_TRUE(shop().tools.find("Cl\xC3\xA9"));
  EXPECT_EQ(shop().tools.find("Cle\xCC\x81")->id, "Cl\xC3\xA9");
  EXPECT_NE(shop().lastEntry().find("\"Cl\xC3\xA9\""), std::string::npos);
}

TEST_F(RoundTrip, AByteOrderMarkIsNoText) {
  auto tool = bareTool();
  tool.description = "\xEF\xBB\xBF\xEF\xBB\xBFwrench";
  tool.maker = "\xEF\xBB\xBF";
  tool.id = "MARK";
  write([&](OpenShop& to) { to.tools.add(tool, stamp); });
  EXPECT_EQ(shop().tools.find("MARK")->description, "wrench");
  EXPECT_EQ(shop().tools.find("MARK")->maker, "");
  EXPECT_NE(shop().lastEntry().find("\"description\":\"wrench\""), std::string::npos);
}

TEST_F(RoundTrip, BytesThatAreNotTextAreRefused) {
  auto tool = bareTool();
  tool.id = "latin-\xE9";
  Transaction transaction(shop().database);
  EXPECT_THROW(shop().tools.add(tool, stamp), StoreError);
}

}  // namespace
}  // namespace steadyturn
