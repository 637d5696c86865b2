// SPDX-License-Identifier: MIT
#include "job/json_text.h"

#include <catch2/catch.hpp>
#include <nlohmann/json.hpp>

using namespace strikeoff;

namespace {

std::string code_of(const std::string& text) {
  const JsonResult result = read_json(text);
  CHECK_FALSE(result.json.has_value());
  REQUIRE(result.diagnostics.size() == 1);
  return result.diagnostics.front().code;
}

}  // namespace

TEST_CASE("every value and key has its place in characters", "[job]") {
  const JsonResult result = read_json("{\"é\": [1, // one\n  {\"a/b~\": \"½ in\"}]}");
  REQUIRE(result.json);
  const auto& places = result.json->places;
  CHECK(places.at("").value.column == 1);
  const Place& list = places.at("/é");
  CHECK(list.key->column == 2);
  CHECK(list.key->width == 3);
  CHECK(list.value.column == 7);
  CHECK(places.at("/é/0").value.column == 8);
  const Place& text = places.at("/é/1/a~1b~0");
  CHECK(text.key->line == 2);
  CHECK(text.key->column == 4);
  CHECK(text.key->width == 6);
  CHECK(text.value.column == 12);
  CHECK(text.value.width == 6);
}

TEST_CASE("every pointer of the value is among the places", "[job]") {
  const std::string text =
      R"({"a": {"b\u0041": [true, null, -1.5e3, []], "": {}}, /* c */ "d": "\"x\\"})";
  const JsonResult result = read_json(text);
  REQUIRE(result.json);
  const nlohmann::json flat = nlohmann::json::parse(text, nullptr, true, true).flatten();
  for (const auto& member : flat.items()) {
    INFO(member.key());
    CHECK(result.json->places.contains(member.key()));
  }
  CHECK(result.json->root.find("a")->find("bA"));
}

TEST_CASE("a byte order mark and Windows line ends change no column", "[job]") {
  const JsonResult result = read_json("\xEF\xBB\xBF{\r\n  \"a\": 1\r\n}");
  REQUIRE(result.json);
  CHECK(result.json->places.at("/a").key->line == 2);
  CHECK(result.json->places.at("/a").key->column == 3);
}

TEST_CASE("duplicate keys are found beside a value that can be used", "[job]") {
  const JsonResult result = read_json("{\"a\": 1,\n \"b\": {\"a\": 1},\n \"\\u0061\": 2}");
  REQUIRE(result.json);
  REQUIRE(result.diagnostics.size() == 1);
  CHECK(result.diagnostics[0].code == "duplicate-key");
  CHECK(result.diagnostics[0].line == 3);
  CHECK(result.diagnostics[0].help == "the first is on line 1; keep one");
}

TEST_CASE("texts that are no JSON have one reason", "[job]") {
  CHECK(code_of("") == "empty-file");
  CHECK(code_of("// only a comment") == "empty-file");
  CHECK(code_of("{") == "unclosed-bracket");
  CHECK(code_of("{\"a\"") == "missing-colon");
  CHECK(code_of("{\"a\":") == "missing-value");
  CHECK(code_of("{\"a\": 1") == "unclosed-bracket");
  CHECK(code_of("[1 2]") == "missing-comma");
  CHECK(code_of("[,1]") == "missing-value");
  CHECK(code_of("{,}") == "double-comma");
  CHECK(code_of("[1,,2]") == "double-comma");
  CHECK(code_of("[1,]") == "trailing-comma");
  CHECK(code_of("[1}") == "wrong-bracket");
  CHECK(code_of("[\"a\": 1]") == "stray-colon");
  CHECK(code_of("{\"a\" = 1}") == "missing-colon");
  CHECK(code_of("[1;2]") == "missing-comma");
  CHECK(code_of("[-]") == "bad-number");
  CHECK(code_of("[+1]") == "bad-number");
  CHECK(code_of("[1.]") == "bad-number");
  CHECK(code_of("[.5]") == "bad-number");
  CHECK(code_of("[1e5.]") == "bad-number");
  CHECK(code_of("[00]") == "bad-number");
  CHECK(code_of("[76in]") == "missing-quote");
  CHECK(code_of("[-1e400]") == "number-range");
  CHECK(code_of("[NaN]") == "missing-quote");
  CHECK(code_of("[\"\\x\"]") == "bad-escape");
  CHECK(code_of("[\"\\u12\"]") == "bad-escape");
  CHECK(code_of("[\"\\ud800\"]") == "bad-escape");
  CHECK(code_of("[\"a\tb\"]") == "control-character");
  CHECK(code_of("[\"abc") == "missing-quote");
  CHECK(code_of("[\"abc\\") == "missing-quote");
  CHECK(code_of("/*/") == "unclosed-comment");
  CHECK(code_of("1 /") == "text-after-end");
  CHECK(code_of(std::string("[1]\0", 4)) == "not-utf-8");
  CHECK(code_of("[\"\xC0\x80\"]") == "not-utf-8");
  CHECK(code_of("[\"\xED\xA0\x80\"]") == "not-utf-8");
  CHECK(code_of("\xFF\xFE[") == "not-utf-8");
}

TEST_CASE("texts beyond the limits are refused", "[job]") {
  CHECK(code_of(std::string(most_bytes + 1, ' ')) == "file-too-large");
  CHECK(code_of(std::string(most_levels + 1, '[')) == "too-deep");
  CHECK(code_of(std::string(1'000'000, '[')) == "too-deep");
  std::string list = "[0";
  for (int i = 1; i < most_entries; ++i) list += ",0";
  CHECK(read_json(list + "]").json.has_value());
  CHECK(code_of(list + ",0]") == "too-many-entries");
  std::string lists = "[" + list + "]";
  for (int i = 1; i < 300; ++i) lists += "," + list + "]";
  CHECK(code_of(lists + "]") == "too-many-values");
}

TEST_CASE("a text cut anywhere or with any byte changed never gets past unnoticed", "[job]") {
  const std::string good = R"({"a": ["76 in", 1.5, {"b": true}], /* c */ "d": "\u00bd"})";
  REQUIRE(read_json(good).json);
  for (std::size_t i = 0; i < good.size(); ++i) {
    const JsonResult cut = read_json(good.substr(0, i));
    CHECK(cut.json.has_value() == cut.diagnostics.empty());
    CHECK_FALSE(cut.json.has_value());
    for (int byte = 0; byte < 256; ++byte) {
      std::string changed = good;
      changed[i] = static_cast<char>(byte);
      const JsonResult result = read_json(changed);
      // The scanner must agree with the JSON library about what is JSON, save for a NUL and for
      // what the library does not look at in comments.
      const bool library = nlohmann::json::accept(changed, true);
      if (result.json.has_value()) CHECK(library);
      if (!result.json && library) CHECK(result.diagnostics.front().code == "not-utf-8");
    }
  }
}
