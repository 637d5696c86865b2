// SPDX-License-Identifier: MIT
#include "render/text_table.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <sstream>

using namespace strikeoff::text;

namespace {

std::size_t widest_line(const std::string& text) {
  std::istringstream lines(text);
  std::size_t widest = 0;
  for (std::string line; std::getline(lines, line);) widest = std::max(widest, columns(line));
  return widest;
}

}  // namespace

TEST_CASE("wrapping breaks at spaces and keeps every word") {
  CHECK(wrap("one two three", 7) == std::vector<std::string>{"one two", "three"});
  CHECK(wrap("", 7) == std::vector<std::string>{""});
  CHECK(wrap("  a   b ", 7) == std::vector<std::string>{"a b"});
}

TEST_CASE("a word longer than the line is broken and loses no letter") {
  CHECK(wrap("ab abcdefgh", 3) == std::vector<std::string>{"ab", "abc", "def", "gh"});
}

TEST_CASE("control characters and direction marks never reach the page") {
  CHECK(clean("a\x1b[31mb\tc\nd") == "a [31mb c d");
  CHECK(clean("\x7f") == " ");
  CHECK(clean("a\xe2\x80\xae"
              "b") == "a b");       // U+202E, right-to-left override
  CHECK(clean("\xc2\x85") == " ");  // U+0085, next line
}

TEST_CASE("letters outside ASCII stay and broken UTF-8 becomes a question mark") {
  CHECK(clean("B\xc3\xa4nk") == "B\xc3\xa4nk");
  CHECK(clean("\xff\xc3") == "??");
  CHECK(clean("\xed\xa0\x80") == "???");  // a surrogate is not UTF-8 (RFC 3629)
  CHECK(clean("\xc0\xaf") == "??");       // overlong
}

TEST_CASE("width counts characters and twice the wide ones") {
  CHECK(columns("B\xc3\xa4nk") == 4);
  CHECK(columns("\xe5\x8f\xb0") == 2);  // U+53F0
}

TEST_CASE("numbers stand flush right under their title") {
  Table table({{"item"}, {"n", Align::right}});
  table.add({"a", "1"});
  table.add({"bb", "100"});
  CHECK(table.str(2, 100) == "  item    n\n  a       1\n  bb    100\n");
}

TEST_CASE("a table without titles has no title line") {
  Table table({{""}, {""}});
  table.add({"a", "b"});
  CHECK(table.str(0, 100) == "a  b\n");
}

TEST_CASE("a table fits the page by wrapping its widest columns") {
  Table table({{"name"}, {"n", Align::right}, {"advice"}});
  table.add({std::string(200, 'x'), "12", std::string(90, 'y') + " " + std::string(90, 'z')});
  const std::string text = table.str(2, 100);
  CHECK(widest_line(text) <= 100);
  CHECK(std::count(text.begin(), text.end(), 'x') == 200);
  CHECK(std::count(text.begin(), text.end(), 'z') == 90);
  CHECK(text.find("12") != std::string::npos);
}

TEST_CASE("a column with a long word keeps it while another can give way", "[table]") {
  Table table({{"Item"}, {"Buy"}});
  table.add({"penetrating sealer for a bench", "1 can of paint and so on"});
  // 18 columns: 11 for the longest word, a gap of 2, and 5 for the other's.
  const std::string narrow = table.str(0, 18);
  CHECK(narrow.find("penetrating") != std::string::npos);
  CHECK(narrow.find("paint") != std::string::npos);
  CHECK(widest_line(narrow) == 18);
  CHECK(widest_line(table.str(0, 12)) <= 12);  // then words break
}

TEST_CASE("a word too long for its line breaks after a hyphen between letters", "[table]") {
  CHECK(wrap("alkali-resistant", 10) == std::vector<std::string>{"alkali-", "resistant"});
  CHECK(wrap("abcdefghijkl", 5) == std::vector<std::string>{"abcde", "fghij", "kl"});
  CHECK(wrap("2026-05-17", 6) == std::vector<std::string>{"2026-0", "5-17"});
}
