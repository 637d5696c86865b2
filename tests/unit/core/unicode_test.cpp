// SPDX-License-Identifier: MIT
#include "core/unicode.h"

#include <catch2/catch.hpp>
#include <string>

using namespace strikeoff;

TEST_CASE("every length of UTF-8 is read and written again", "[unicode]") {
  // The first and the last code point of each length (RFC 3629).
  const std::u32string all = U"A\u007F\u0080\u07FF\u0800\uFFFD\U00010000\U0010FFFF";
  const std::string text = utf8(all);
  CHECK(text.size() == 2 * (1 + 2 + 3 + 4));
  CHECK(code_points(text) == all);
  CHECK(first_character("\xE2\x82\xACx").code == 0x20AC);
  CHECK(first_character("\xE2\x82\xACx").bytes == 3);
}

TEST_CASE("bytes that are not UTF-8 are none of its characters", "[unicode]") {
  CHECK(code_points("\xFFz") == U"\uFFFDz");
  const char* const wrong[] = {"\xC0\xAF",          // an overlong slash
                               "\xE0\x80\xAF",      // the same in three bytes
                               "\xF0\x80\x80\xAF",  // and in four
                               "\xED\xA0\x80",      // half a surrogate pair
                               "\xF4\x90\x80\x80",  // past U+10FFFF
                               "\xE2\x82",          // cut short
                               "\xE2\x28\xA1",      // its second byte goes on with nothing
                               "\x80"};             // begins nothing
  for (const char* text : wrong) {
    CHECK(first_character(text).bytes == 0);
    CHECK(code_points(text).front() == U'\uFFFD');
  }
}

TEST_CASE("controls, marks of direction and what has no width are not printable", "[unicode]") {
  for (const char32_t code :
       {0x00U, 0x1BU, 0x7FU, 0x9FU, 0x061CU, 0x200BU, 0x200FU, 0x2028U, 0x202AU, 0x202EU, 0x2066U,
        0x2069U, 0xFEFFU, 0xFFFEU, 0xFFFFU, 0xE0001U}) {
    CHECK(is_unprintable(code));
  }
  for (const char32_t code :
       {0x20U, 0x7EU, 0xA0U, 0xB5U, 0x5D0U, 0x200AU, 0x2026U, 0x2030U, 0xFFFDU, 0x1F600U}) {
    CHECK_FALSE(is_unprintable(code));
  }
}
