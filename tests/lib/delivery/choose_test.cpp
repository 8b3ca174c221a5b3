#include "choose.h"

#include <gmock/gmock.h>
#include <gtest/gtest.h>

#include "delivery_example.h"

namespace steadyturn {
namespace {

using ::testing::HasSubstr;
using testing::newtonMetres;

SetPointOutlook outlook(double target, double predicted, double standardError, int degreesOfFreedom) {
  SetPointOutlook point{.target = newtonMetres(target),
                        .drift = {},
                        .newestMeanDeviationPercent = predicted,
                        .pull = {.standardPercent = 0.2 + target / 1000, .degreesOfFreedom = 4},
                        .referenceStandardUncertaintyPercent = target / 100};
  point.drift.degreesOfFreedom = degreesOfFreedom;
  point.drift.state = DriftState::Steady;
  point.drift.predictedPercent = predicted;
  point.drift.predictionStandardError = standardError;
  return point;
}

SetPointOutlook unknownOutlook(double target, double newestMean) {
  SetPointOutlook point = outlook(target, newestMean, 0, 0);
  point.drift = DriftResult{};
  point.drift.predictedPercent = 99;  // two checks have a line, but nothing says how far to trust it
  return point;
}

Candidate wrench(std::string name, std::vector<SetPointOutlook> outlooks) {
  return {.tool = std::move(name),
          .kind = {.type = ToolType::Setting, .cls = ToolClass::A},
          .minimum = newtonMetres(20),
          .maximum = newtonMetres(100),
          .resolution = newtonMetres(1),
          .limitPercent = 4,
          .refusal = {},
          .outlooks = std::move(outlooks)};
}

Candidate goodWrench(std::string name = "W1") {
  return wrench(std::move(name), {outlook(20, 1, 0.5, 6), outlook(60, 2, 0.7, 4), outlook(100, -1, 0.3, 9)});
}

Demand demand(double target) {
  return {.target = newtonMetres(target), .low = {}, .high = {}, .partLimit = {}, .adapter = {}};
}

TEST(Demand, WithoutAWindowTenPercentIsTaken) {
  EXPECT_EQ(windowOf(demand(25)).low, newtonMetres(22.5));
  EXPECT_EQ(windowOf(demand(25)).high, newtonMetres(27.5));
  Demand stated = demand(25);
  stated.low = newtonMetres(24);
  EXPECT_EQ(windowOf(stated).low, newtonMetres(22.5));  // half a window is none
  stated.high = newtonMetres(26);
  EXPECT_EQ(windowOf(stated).low, newtonMetres(24));
  EXPECT_EQ(windowOf(stated).high, newtonMetres(26));
}

TEST(DeliveryAt, InterpolatesBetweenSetPoints) {
  const DeliveryInput input = deliveryAt(goodWrench(), demand(50), newtonMetres(50));
  EXPECT_NEAR(input.deviationPercent, 1 + 0.75 * (2 - 1), 1e-12);
  EXPECT_NEAR(input.deviation.standardPercent, 0.5 + 0.75 * 0.2, 1e-12);
  EXPECT_EQ(input.deviation.degreesOfFreedom, 4);        // the smaller of 6 and 4
  EXPECT_NEAR(input.pull.standardPercent, 0.26, 1e-12);  // of the nearest set-point, 60
  EXPECT_NEAR(input.referenceStandardUncertaintyPercent, 0.6, 1e-12);
  EXPECT_EQ(input.resolution, newtonMetres(1));
  EXPECT_TRUE(problemsOf(input).empty());
}

TEST(DeliveryAt, HoldsTheEndsOutsideTheSetPointsAndHitsThemExactly) {
  EXPECT_EQ(deliveryAt(goodWrench(), demand(50), newtonMetres(10)).deviationPercent, 1);
  EXPECT_EQ(deliveryAt(goodWrench(), demand(50), newtonMetres(60)).deviationPercent, 2);
  EXPECT_EQ(deliveryAt(goodWrench(), demand(50), newtonMetres(60)).deviation.degreesOfFreedom, 4);
  EXPECT_EQ(deliveryAt(goodWrench(), demand(50), newtonMetres(150)).deviationPercent, -1);
  // 44.254 lbf·ft is 60 N·m.
  const StatedTorque sixty = convert(newtonMetres(60), Unit::PoundForceFoot);
  EXPECT_NEAR(deliveryAt(goodWrench(), demand(50), sixty).deviationPercent, 2, 1e-9);
}

TEST(DeliveryAt, AnUnknownDriftCountsWithHalfThePermissibleDeviation) {
  const Candidate newcomer = wrench("N", {unknownOutlook(20, 1.5), unknownOutlook(100, 2.5)});
  const DeliveryInput input = deliveryAt(newcomer, demand(60), newtonMetres(60));
  EXPECT_NEAR(input.deviationPercent, 2, 1e-12);
  EXPECT_EQ(input.deviation.standardPercent, 2);
  EXPECT_FALSE(input.deviation.degreesOfFreedom);
  const Choice choice = choose(demand(60), {newcomer});
  ASSERT_EQ(choice.options.size(), 1U);
  EXPECT_TRUE(choice.options[0].assumedDrift());
  EXPECT_EQ(choice.options[0].driftState, DriftState::Unknown);
}

TEST(DeliveryAt, AOnePercentGraduationIsAssumedForAToolWithoutOne) {
  Candidate plain = goodWrench();
  plain.resolution.reset();
  EXPECT_EQ(deliveryAt(plain, demand(50), newtonMetres(50)).resolution, newtonMetres(1));
  plain.kind.cls = ToolClass::B;  // fixed: there is nothing to set
  EXPECT_FALSE(deliveryAt(plain, demand(50), newtonMetres(50)).resolution);
}

TEST(Choose, TakesTheGraduationThatMakesUpForTheDeviation) {
  const Choice choice = choose(demand(60), {goodWrench()});
  ASSERT_EQ(choice.options.size(), 1U);
  const Option& option = choice.options[0];
  EXPECT_EQ(option.setting, newtonMetres(61));  // 61 / 1.02 = 59.8 against 62 / 1.0185 = 60.9 and 60 / 1.02 = 58.8
  EXPECT_NEAR(option.delivery.expected.value, 61 / (1 + (2 - 3.0 / 40) / 100), 1e-9);
  EXPECT_FALSE(option.assumedDrift());
  EXPECT_EQ(option.driftState, DriftState::Steady);
}

TEST(Choose, RanksByTheProbabilityWithin) {
  Candidate loose = wrench("LOOSE", {outlook(20, 0, 3, 3), outlook(100, 0, 3, 3)});
  Candidate tight = wrench("TIGHT", {outlook(20, 0, 0.3, 20), outlook(100, 0, 0.3, 20)});
  Candidate twin = tight;
  twin.tool = "A TWIN";
  const Choice choice = choose(demand(60), {loose, tight, twin});
  ASSERT_EQ(choice.options.size(), 3U);
  EXPECT_EQ(choice.options[0].tool, "A TWIN");
  EXPECT_EQ(choice.options[1].tool, "TIGHT");
  EXPECT_EQ(choice.options[2].tool, "LOOSE");
  EXPECT_GT(choice.options[1].delivery.probabilityWithin, choice.options[2].delivery.probabilityWithin);
}

RefusalKind onlyRefusal(const Demand& wanted, const Candidate& candidate) {
  const Choice choice = choose(wanted, {candidate});
  EXPECT_TRUE(choice.options.empty());
  EXPECT_EQ(choice.refused.size(), 1U);
  return choice.refused.at(0).refusal.kind;
}

TEST(Choose, KeepsTheReasonsThatItIsGivenInTheOrderGiven) {
  Candidate held = wrench("HELD", {});
  held.refusal = Refusal{RefusalKind::Held, "dropped"};
  Candidate retired = goodWrench("RETIRED");
  retired.refusal = Refusal{RefusalKind::Retired, ""};
  const Choice choice = choose(demand(60), {held, retired, wrench("BARE", {})});
  ASSERT_EQ(choice.refused.size(), 3U);
  EXPECT_EQ(writeRefusal(choice.refused[0].refusal), "on hold (dropped)");
  EXPECT_EQ(writeRefusal(choice.refused[1].refusal), "retired");
  EXPECT_EQ(choice.refused[2].refusal.kind, RefusalKind::NoCheck);
}

TEST(Choose, RefusesWhatIsOutOfRange) {
  EXPECT_EQ(onlyRefusal(demand(15), goodWrench()), RefusalKind::OutOfRange);
  EXPECT_EQ(onlyRefusal(demand(150), goodWrench()), RefusalKind::OutOfRange);
  EXPECT_THAT(choose(demand(150), {goodWrench()}).refused[0].refusal.detail, HasSubstr("100"));
  // Where no minimum is marked, 20 % of the maximum is the lowest sensible setting.
  Candidate unmarked = goodWrench();
  unmarked.minimum.reset();
  unmarked.maximum = newtonMetres(200);
  EXPECT_EQ(onlyRefusal(demand(30), unmarked), RefusalKind::OutOfRange);
  EXPECT_EQ(choose(demand(44), {unmarked}).options.size(), 1U);
}

TEST(Choose, AnEdgeOfTheRangeStillServes) {
  Demand edge = demand(100);
  edge.low = newtonMetres(95);
  edge.high = newtonMetres(110);
  ASSERT_EQ(choose(edge, {goodWrench()}).options.size(), 1U);
  EXPECT_EQ(choose(edge, {goodWrench()}).options[0].setting, newtonMetres(100));
}

TEST(Choose, AScaleTooCoarseForTheWindowIsOutOfRange) {
  Demand narrow = demand(60.25);
  narrow.low = newtonMetres(60.2);
  narrow.high = newtonMetres(60.3);
  const Candidate straight = wrench("W", {outlook(20, 0, 0.1, 9), outlook(100, 0, 0.1, 9)});
  EXPECT_EQ(onlyRefusal(narrow, straight), RefusalKind::OutOfRange);
  narrow.low = newtonMetres(60);
  narrow.high = newtonMetres(60.5);
  EXPECT_EQ(choose(narrow, {straight}).options.at(0).setting, newtonMetres(60));
}

TEST(Choose, AFixedToolHasOneValue) {
  Candidate fixed = goodWrench("FIXED");
  fixed.kind.cls = ToolClass::B;
  fixed.resolution.reset();
  EXPECT_EQ(choose(demand(100), {fixed}).options.at(0).setting, newtonMetres(100));
  EXPECT_EQ(onlyRefusal(demand(60), fixed), RefusalKind::OutOfRange);
  EXPECT_THAT(choose(demand(60), {fixed}).refused[0].refusal.detail, HasSubstr("fixed at 100"));
  Demand fragile = demand(100);
  fragile.partLimit = newtonMetres(101);
  EXPECT_EQ(onlyRefusal(fragile, fixed), RefusalKind::PartLimitRisk);
}

TEST(Choose, AnAdjustableToolWithoutAScaleIsSetAtTheBench) {
  for (const ToolClass cls : {ToolClass::C, ToolClass::F}) {
    Candidate plain = goodWrench();
    plain.kind.cls = cls;
    EXPECT_EQ(onlyRefusal(demand(60), plain), RefusalKind::NotSettable);
  }
  EXPECT_THAT(writeRefusal({RefusalKind::NotSettable, ""}), HasSubstr("at the bench"));
}

TEST(Choose, ThePartsLimitIsKept) {
  Demand plastic = demand(60);
  plastic.partLimit = StatedTorque{.value = 45.7, .unit = Unit::PoundForceFoot};  // 61.96 N·m
  const Choice careful = choose(plastic, {goodWrench()});
  ASSERT_EQ(careful.options.size(), 1U);
  EXPECT_LE(careful.options[0].delivery.probabilityOverPartLimit.value(), defaultPartLimitRisk);
  EXPECT_LT(careful.options[0].setting.value, 61);
  // A limit inside the window's lower end: only missing the window would keep it.
  plastic.partLimit = newtonMetres(54.2);
  EXPECT_EQ(onlyRefusal(plastic, goodWrench()), RefusalKind::PartLimitRisk);
}

TEST(Choose, AnAdapterAsksForLess) {
  Demand with = demand(60);
  with.adapter = Adapter{.wrenchLengthMm = 400, .offsetMm = 100, .angleDeg = 0};
  const Candidate straight = wrench("W", {outlook(20, 0, 0.1, 9), outlook(100, 0, 0.1, 9)});
  EXPECT_EQ(choose(with, {straight}).options.at(0).setting, newtonMetres(48));
}

TEST(Choose, APredictionBeyondAllMeaningIsRefused) {
  const Candidate wild = wrench("WILD", {outlook(20, -180, 900, 1), outlook(100, -180, 900, 1)});
  EXPECT_EQ(onlyRefusal(demand(60), wild), RefusalKind::OutOfRange);
}

TEST(Choose, TheMoreWorryingNeighbourNamesTheDrift) {
  Candidate mixed = goodWrench();
  mixed.outlooks[1].drift.state = DriftState::Drifting;
  mixed.outlooks[2].drift.state = DriftState::Leaving;
  EXPECT_EQ(choose(demand(40), {mixed}).options.at(0).driftState, DriftState::Drifting);
  EXPECT_EQ(choose(demand(80), {mixed}).options.at(0).driftState, DriftState::Leaving);
}

}  // namespace
}  // namespace steadyturn
