// SPDX-License-Identifier: MIT
#include "strikeoff/diagnostic.h"

#include <catch2/catch.hpp>

#include <nlohmann/json.hpp>

using namespace strikeoff;

TEST_CASE("a diagnostic shows its line with a marker and where and how", "[job]") {
  const Diagnostic d{"unknown-key",
                     "unknown key \"lenght\" in a slab",
                     "a slab has \"length\"",
                     "/slabs/0/lenght",
                     2,
                     3,
                     8};
  CHECK(render_diagnostics({d}, "job.json", "{\n\t\t\"lenght\": 1\n}") ==
        "job.json:2:3: error: unknown key \"lenght\" in a slab [unknown-key]\n"
        "    2 |   \"lenght\": 1\n"
        "      |   ^^^^^^^^\n"
        "  at /slabs/0/lenght\n"
        "  help: a slab has \"length\"\n"
        "1 error; no plan was made\n");
}

TEST_CASE("a long line is cut on both sides of the marker", "[job]") {
  const std::string line = std::string(200, 'a') + "BAD" + std::string(200, 'b');
  const std::string shown = render_diagnostics({{"x", "m", "", "", 1, 201, 3}}, "f", line);
  CHECK(shown ==
        "f:1:201: error: m [x]\n"
        "    1 | ..." +
            std::string(30, 'a') + "BAD" + std::string(57, 'b') +
            "...\n"
            "      | " +
            std::string(33, ' ') +
            "^^^\n"
            "1 error; no plan was made\n");
}

TEST_CASE("a marker beyond the text or without one still gives a message", "[job]") {
  CHECK(render_diagnostics({{"x", "m", "", "", 7, 3, 2}}, "f", "{}") ==
        "f:7:3: error: m [x]\n    7 |\n      |   ^^\n1 error; no plan was made\n");
}

TEST_CASE("control characters and broken bytes of the job never reach the terminal", "[job]") {
  const std::string shown =
      render_diagnostics({{"x", "m", "", "", 1, 1, 1}}, "f", "\x1b[31m \xFF \xC2\x9B \xC3");
  CHECK(shown.find("    1 |  [31m ?   ?\n") != std::string::npos);
}

TEST_CASE("diagnostics as JSON carry every part", "[job]") {
  const auto list = nlohmann::json::parse(render_diagnostics_json(
      {{"no-unit", "1 has no unit", "write it", "/slabs/0/thickness", 3, 5, 1}}, "a.json"));
  REQUIRE(list.size() == 1);
  CHECK(list[0] == nlohmann::json{{"file", "a.json"},
                                  {"line", 3},
                                  {"column", 5},
                                  {"pointer", "/slabs/0/thickness"},
                                  {"severity", "error"},
                                  {"code", "no-unit"},
                                  {"message", "1 has no unit"},
                                  {"help", "write it"}});
  CHECK(render_diagnostics_json({}, "a.json") == "[]\n");
}
