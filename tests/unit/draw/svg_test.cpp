// SPDX-License-Identifier: MIT
#include "draw/svg.h"

#include <catch2/catch.hpp>
#include <string>

using namespace strikeoff::draw;

namespace {

bool has(const Svg& svg, const std::string& words) {
  return svg.str().find(words) != std::string::npos;
}

Svg page() {
  return Svg("a", 100, 50, "title", "description");
}

}  // namespace

TEST_CASE("numbers in a drawing have at most three decimals and no minus zero", "[draw]") {
  Svg svg = page();
  svg.line({1.0 / 3, -1e-9}, {2, 0.1234567}, thin_pen);
  CHECK(has(svg, R"(x1="0.333" y1="0" x2="2" y2="0.123")"));
}

TEST_CASE("a drawing escapes its title and its texts", "[draw]") {
  Svg svg("a", 100, 50, "<b>", "\"d\" & e");
  svg.text({1, 1}, "</text><script>");
  svg.begin_group("\"quoted\"");
  svg.end_group();
  CHECK(has(svg, "<title id=\"a-title\">&lt;b&gt;</title>"));
  CHECK(has(svg, "&lt;/text&gt;&lt;script&gt;"));
  CHECK(has(svg, "data-what=\"&quot;quoted&quot;\""));
  CHECK_FALSE(has(svg, "<script"));
}

TEST_CASE("patterns of a drawing carry its id so that two can share a page", "[draw]") {
  Svg svg = page();
  svg.box({0, 0, 1, 1}, Fill::wood, thin_pen);
  CHECK(has(svg, "fill=\"url(#a-wood)\""));
  CHECK(has(svg, "<pattern id=\"a-wood\""));
}

TEST_CASE("an arrow of no length is not drawn", "[draw]") {
  Svg svg = page();
  svg.arrow({1, 1}, {1, 1});
  CHECK_FALSE(has(svg, "polygon"));
}

TEST_CASE("a fitted text is no wider than asked and ends in dots where it was cut", "[draw]") {
  const TextStyle style{3};
  CHECK(fitted("short", 50, style) == "short");
  const std::string cut = fitted(std::string(200, 'W'), 50, style);
  CHECK(text_width(cut, style) <= 50);
  CHECK(cut.ends_with("…"));
  CHECK(fitted("anything", 0, style) == "…");
}

TEST_CASE("a text is not cut inside a letter of several bytes", "[draw]") {
  const std::string cut = fitted("ÄÖÜÄÖÜÄÖÜ", 12, TextStyle{3});
  CHECK(cut.find("\xEF\xBF\xBD") == std::string::npos);
  CHECK(cut.starts_with("Ä"));
}

TEST_CASE("bold and larger letters stand wider", "[draw]") {
  CHECK(text_width("abc", {3, Anchor::start, true}) > text_width("abc", {3}));
  CHECK(text_width("abc", {6}) == Approx(2 * text_width("abc", {3})));
}

TEST_CASE("a text turned by a quarter covers a tall box", "[draw]") {
  TextStyle style{3, Anchor::middle};
  style.turn = -90;
  const Quad quad = text_quad({10, 10}, "words", style);
  double left = 99, right = 0, top = 99, bottom = 0;
  for (const PaperPoint& spot : quad) {
    left = std::min(left, spot.x), right = std::max(right, spot.x);
    top = std::min(top, spot.y), bottom = std::max(bottom, spot.y);
  }
  CHECK(bottom - top == Approx(text_width("words", style)));
  CHECK(right - left == Approx(3 * 1.22));  // 0.95 up and 0.27 down
}

TEST_CASE("boxes that only touch do not overlap", "[draw]") {
  const Quad a = corners_of({0, 0, 10, 10});
  CHECK_FALSE(overlap(a, corners_of({10, 0, 5, 5})));
  CHECK(overlap(a, corners_of({9.9, 0, 5, 5})));
  CHECK(overlap(a, corners_of({2, 2, 1, 1})));  // one inside the other
}

TEST_CASE("a turned box overlaps by its own sides and not by its bounding box", "[draw]") {
  // A square on its corner, reaching from 0 to 20: its bounding box holds (1, 1), it does not.
  const Quad diamond{PaperPoint{10, 0}, PaperPoint{20, 10}, PaperPoint{10, 20}, PaperPoint{0, 10}};
  CHECK_FALSE(overlap(diamond, corners_of({0, 0, 4, 4})));
  CHECK(overlap(diamond, corners_of({0, 0, 6, 6})));
}
