// SPDX-License-Identifier: MIT
#include "core/json.h"

#include <catch2/catch.hpp>

using namespace strikeoff;

TEST_CASE("JSON is written as it was read, members in their order", "[json]") {
  const std::string text =
      R"({"b":[1,-2,18446744073709551615,1.5,1.0,null],"a":{"x":true,"":"\"½\n"},"c":[],"d":{}})";
  const auto json = parse_json(text);
  REQUIRE(json);
  CHECK(written(*json) == text);
  CHECK(json->find("a")->find("x")->flag());
  CHECK(*json->find("a")->find("")->text() == "\"½\n");
  CHECK(json->find("b")->list()->at(1).number() == -2);
  CHECK(json->find("b")->list()->at(1).is_whole());
  CHECK(json->find("b")->list()->at(4).number() == 1);
  CHECK_FALSE(json->find("b")->list()->at(4).is_whole());
  CHECK_FALSE(json->find("b")->list()->at(5).number());
  CHECK_FALSE(json->find("e"));
  CHECK_FALSE(json->find("b")->find("e"));
}

TEST_CASE("JSON has comments and of two equal keys the last value", "[json]") {
  const auto json = parse_json("\xEF\xBB\xBF{\"a\": 1, /* b */ \"c\": 2, \"a\": 3} // end");
  REQUIRE(json);
  CHECK(written(*json) == R"({"a":3,"c":2})");
}

TEST_CASE("what is no JSON has no value", "[json]") {
  for (const char* text : {"", "{", "[1,]", "{\"a\"}", "[1] 2", "nul", "1e999", "\"\\ud800\""}) {
    INFO(text);
    CHECK_FALSE(parse_json(text));
  }
}

TEST_CASE("an object is made of members, a list of anything", "[json]") {
  Json json = {{"flag", false}, {"list", std::vector<std::string>{"a", "b"}}};
  json["flag"] = 7U;
  json["more"] = Json::List{1.5, "c", Json()};
  json.add({{"end", Json::Object{}}});
  CHECK(written(json) == R"({"flag":7,"list":["a","b"],"more":[1.5,"c",null],"end":{}})");
}

TEST_CASE("a JSON file is indented, with what is no UTF-8 replaced", "[json]") {
  CHECK(json_file({{"a", Json::List{"½\xFF"}}}) == "{\n  \"a\": [\n    \"½\uFFFD\"\n  ]\n}\n");
  CHECK(json_file({{"a", "½"}}, BeyondAscii::escaped) == "{\n  \"a\": \"\\u00bd\"\n}\n");
}
