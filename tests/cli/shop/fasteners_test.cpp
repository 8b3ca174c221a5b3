#include <gmock/gmock.h>

#include "temp_shop.h"

namespace steadyturn::test {
namespace {

using nlohmann::json;
using ::testing::HasSubstr;

constexpr const char* good = "target,reading,unit\n20,19.8,N.m\n20,20.1,N.m\n60,60.3,N.m\n60,59.9,N.m\n";

TEST_F(NewShop, WarnsOfAPlasticPartWithoutALimitWhereverItIsShown) {
  addToolAndReference();
  ASSERT_EQ(record("2026-03-14", "as_found", good).status, 0);
  const Answer added = run({"fastener", "add", "F1", "--component", "filter cover", "--target", "25", "--unit", "N.m",
                            "--part-material", "plastic"});
  ASSERT_EQ(added.status, 0) << added.err;
  EXPECT_THAT(added.err, HasSubstr("limit"));
  EXPECT_THAT(run({"fastener", "list"}).out, HasSubstr("NEEDED"));
  EXPECT_THAT(run({"fastener", "show", "F1"}).out, HasSubstr("NONE on record"));
  const json choice = ask({"choose", "F1", "--as-of", "2026-03-20"});
  // One warning each: no limit, no low and high (±10 % is taken), drift not known.
  EXPECT_EQ(choice.at("warnings").size(), 3u) << choice.at("warnings");
  const std::string text = run({"choose", "F1", "--as-of", "2026-03-20"}).out;
  EXPECT_THAT(text, HasSubstr("The vehicle maker's service data come first."));
  EXPECT_THAT(text, HasSubstr("not on record"));  // the source
  EXPECT_THAT(text, HasSubstr("25 N.m (18.44 lbf.ft)"));
}

TEST_F(NewShop, QuestionsATorqueThatSuitsAnotherUnit) {
  const Answer added = run({"fastener", "add", "F1", "--component", "bracket", "--target", "40", "--unit", "lbf.ft",
                            "--thread", "M8", "--property-class", "8.8", "--part-material", "steel"});
  ASSERT_EQ(added.status, 0) << added.err;
  EXPECT_THAT(added.err, HasSubstr("40 lbf·ft on M8?"));
}

TEST_F(NewShop, RefusesTargetsOutsideTheirWindowOrAboveTheLimit) {
  const auto add = [&](std::vector<std::string> more) {
    std::vector<std::string> arguments{"fastener", "add", "F",        "--component", "plug",
                                       "--unit",   "N.m", "--target", "25"};
    arguments.insert(arguments.end(), more.begin(), more.end());
    return run(arguments).status;
  };
  EXPECT_EQ(add({"--low", "26"}), 65);
  EXPECT_EQ(add({"--high", "24"}), 65);
  EXPECT_EQ(add({"--part-limit", "20"}), 65);
  EXPECT_EQ(add({"--renew", "maybe"}), 65);
  EXPECT_EQ(ask({"fastener", "list"}).at("fasteners").size(), 0u);
}

TEST_F(NewShop, RevisesOnlyWhatIsTyped) {
  ASSERT_EQ(run({"fastener", "add", "F1", "--component", "drain plug", "--target", "25", "--low", "22", "--unit",
                 "N.m", "--seal", "crush washer", "--source", "manual p. 12"})
                .status,
            0);
  const json revised = ask({"fastener", "revise", "F1", "--reason", "bulletin 4", "--target", "27", "--seal", ""});
  EXPECT_EQ(revised.at("target"), 27);
  EXPECT_EQ(revised.at("low"), 22);
  EXPECT_EQ(revised.at("source"), "manual p. 12");
  EXPECT_TRUE(revised.at("seal").is_null());
  EXPECT_EQ(revised.at("number"), 2);
  EXPECT_EQ(run({"fastener", "revise", "F1", "--target", "28"}).status, 64);  // no reason
  EXPECT_EQ(run({"fastener", "revise", "F9", "--target", "28", "--reason", "x"}).status, 65);
}

TEST_F(NewShop, FindsByTheBeginningsOfWords) {
  ASSERT_EQ(run({"fastener", "add", "F1", "--component", "drain plug", "--target", "25", "--unit", "N.m"}).status, 0);
  EXPECT_EQ(ask({"fastener", "find", "dr", "pl"}).at("fasteners").size(), 1u);
  EXPECT_EQ(ask({"fastener", "find", "wheel"}).at("fasteners").size(), 0u);
  EXPECT_EQ(run({"fastener", "find", "\"(*"}).status, 0);
}

TEST_F(NewShop, RecordsATighteningOnlyWithAToolThatMayBeUsed) {
  addToolAndReference();
  ASSERT_EQ(run({"fastener", "add", "F1", "--component", "plug", "--target", "25", "--unit", "N.m"}).status, 0);
  const std::vector<std::string> tighten{"job",   "tighten",   "J1",         "--fastener",     "F1",  "--tool",
                                         "T1",    "--setting", "25.0",       "--unit",         "N.m", "--vehicle",
                                         "bus 4", "--date",    "2026-03-20", "--seat-checked", "yes", "--json"};
  EXPECT_EQ(run(tighten).status, 65);  // never checked
  ASSERT_EQ(record("2026-03-14", "as_found", good).status, 0);
  const Answer answer = run(tighten);
  ASSERT_EQ(answer.status, 0) << answer.err;
  const json shown = ask({"job", "show", "J1"});
  EXPECT_EQ(shown.at("tightenings").at(0).at("setting"), json::parse(R"({"value": 25.0, "unit": "N.m"})"));
  EXPECT_EQ(shown.at("tightenings").at(0).at("seat_checked"), true);
  EXPECT_EQ(run({"job", "show", "J9"}).status, 65);
}

}  // namespace
}  // namespace steadyturn::test
