// SPDX-License-Identifier: MIT
#include "core/markup.h"

#include <catch2/catch.hpp>
#include <string>

using namespace strikeoff;

TEST_CASE("the five special characters become references", "[markup]") {
  CHECK(markup(R"(<a href="x">Tom & 'Jo'</a>)") ==
        "&lt;a href=&quot;x&quot;&gt;Tom &amp; &#39;Jo&#39;&lt;/a&gt;");
  CHECK(markup("&amp;") == "&amp;amp;");
}

TEST_CASE("line ends and tabs become blanks in markup", "[markup]") {
  CHECK(markup("a\nb\tc") == "a b c");
}

TEST_CASE("what XML forbids becomes the replacement character", "[markup]") {
  const std::string bad = "\xEF\xBF\xBD";
  CHECK(markup(std::string("a\0b", 3)) == "a" + bad + "b");
  CHECK(markup("\x1B[31m") == bad + "[31m");
  CHECK(markup("\xEF\xBF\xBE") == bad);  // U+FFFE
}

TEST_CASE("controls of the writing direction do not reach markup", "[markup]") {
  CHECK(markup("a\u202Eb") == "a\uFFFDb");
  CHECK(markup("a\u2066b") == "a\uFFFDb");
}

TEST_CASE("what nobody sees does not reach markup", "[markup]") {
  for (const char* hidden : {"\u200B", "\u2028", "\uFEFF", "\xFF"}) {
    CHECK(markup(hidden) == "\uFFFD");
  }
}

TEST_CASE("right-to-left letters and accents pass through markup as they are", "[markup]") {
  const std::string words = "שולחן Größe 10 µm";
  CHECK(markup(words) == words);
}
