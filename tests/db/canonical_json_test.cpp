// RFC 8785 (JSON Canonicalization Scheme): the examples of its published test data (cyberphone/json-canonicalization,
// testdata, Apache-2.0) that keep within what an entry may hold: no floats, ASCII keys.
#include <nlohmann/json.hpp>
#include <stdexcept>

#include "shop_fixture.h"

namespace steadyturn {
namespace {

std::string canonical(const char* text) { return canonicalJson(Facts::parse(text)); }

// testdata/input/arrays.json → testdata/output/arrays.json
TEST(CanonicalJson, Arrays) {
  EXPECT_EQ(canonical(R"([
  56,
  {
    "d": true,
    "10": null,
    "1": [ ]
  }
])"),
            R"([56,{"1":[],"10":null,"d":true}])");
}

// testdata structures.json; its 56.0 is written 56 here, which is how an entry must state a whole number.
TEST(CanonicalJson, Structures) {
  EXPECT_EQ(canonical(R"({
  "1": {"f": {"f": "hi","F": 5} ,"\n": 56},
  "10": { },
  "": "empty",
  "a": { },
  "111": [ {"e": "yes","E": "no" } ],
  "A": { }
})"),
            R"({"":"empty","1":{"\n":56,"f":{"F":5,"f":"hi"}},"10":{},"111":[{"E":"no","e":"yes"}],"A":{},"a":{}})");
}

// testdata values.json without its "numbers".
TEST(CanonicalJson, Values) {
  EXPECT_EQ(canonical(R"({
  "string": "\u20ac$\u000F\u000aA'\u0042\u0022\u005c\\\"\/",
  "literals": [null, true, false]
})"),
            "{\"literals\":[null,true,false],\"string\":\"\xE2\x82\xAC$\\u000f\\nA'B\\\"\\\\\\\\\\\"/\"}");
}

// testdata unicode.json: canonical form does not normalise (the ledger does so before).
TEST(CanonicalJson, LeavesTextAsItIs) {
  EXPECT_EQ(canonical(R"({"Unnormalized Unicode":"A\u030a"})"), "{\"Unnormalized Unicode\":\"A\xCC\x8A\"}");
}

// RFC 8785, 3.2.2.2: the control characters' spellings; nothing else is escaped.
TEST(CanonicalJson, EscapesAsTheStandardSays) {
  EXPECT_EQ(canonicalJson("\b\t\n\f\r\x01\x1f\x7f\xE2\x80\xA8"), "\"\\b\\t\\n\\f\\r\\u0001\\u001f\x7f\xE2\x80\xA8\"");
}

TEST(CanonicalJson, WholeNumbers) {
  EXPECT_EQ(canonicalJson({-9007199254740991, 0, 9007199254740991}), "[-9007199254740991,0,9007199254740991]");
}

TEST(CanonicalJson, RefusesFloatsAnywhere) {
  EXPECT_THROW(canonicalJson(1.5), std::invalid_argument);
  EXPECT_THROW(canonicalJson({{"a", {1, {{"b", 2.0}}}}}), std::invalid_argument);
}

// testdata weird.json sorts by UTF-16 units, which is not the order of bytes; such keys are not taken.
TEST(CanonicalJson, RefusesKeysBeyondAscii) { EXPECT_THROW(canonicalJson({{"\xC3\xB6", 1}}), std::invalid_argument); }

}  // namespace
}  // namespace steadyturn
