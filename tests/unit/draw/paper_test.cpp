// SPDX-License-Identifier: MIT
#include "draw/paper.h"

#include <catch2/catch.hpp>
#include <string>

using namespace strikeoff;
using namespace strikeoff::draw;

namespace {

Svg page() {
  return Svg("a", 200, 100, "title", "description");
}

std::size_t count_of(const std::string& text, const std::string& what) {
  std::size_t n = 0;
  for (auto at = text.find(what); at != std::string::npos; at = text.find(what, at + 1)) ++n;
  return n;
}

}  // namespace

TEST_CASE("the scale is the largest common one at which it fits", "[draw]") {
  const PaperBox room{0, 0, 200, 100};
  // 2000 mm on 200 mm of paper need exactly 1:10; a millimetre more needs the next.
  CHECK(scale_for(Length::mm(2000), Length::mm(500), room, Units::metric).denominator == 10);
  CHECK(scale_for(Length::mm(2001), Length::mm(500), room, Units::metric).denominator == 15);
  CHECK(scale_for(Length::mm(100), Length::mm(1001), room, Units::metric).denominator == 15);
}

TEST_CASE("US scales are so much of an inch to the foot", "[draw]") {
  const PaperBox room{0, 0, 200, 100};
  // 94 in are 2387.6 mm: 12 times 200 mm hold them.
  const Scale scale = scale_for(Length::inches(94), Length::inches(28), room, Units::us);
  CHECK(scale.denominator == 12);
  CHECK(scale.words == "1:12 (1 in is 1 ft)");
}

TEST_CASE("beyond the common scales the next hundred is taken", "[draw]") {
  const PaperBox room{0, 0, 200, 100};
  CHECK(scale_for(Length::mm(130000), Length::mm(1), room, Units::metric).words == "1:700");
}

TEST_CASE("a small thing is drawn at full size and no larger", "[draw]") {
  CHECK(scale_for(Length::mm(1), Length::mm(1), {0, 0, 200, 100}, Units::metric).denominator == 1);
}

TEST_CASE("a view puts the middle of what it shows in the middle of the room", "[draw]") {
  const View view =
      view_of({{Length::mm(-500), Length::mm(100)}, Length::mm(1000), Length::mm(400)},
              {10, 20, 200, 100}, Units::metric);
  const PaperPoint middle = view(Point{Length::mm(0), Length::mm(300)});
  CHECK(middle.x == Approx(110));
  CHECK(middle.y == Approx(70));
  // Up in the frame is up on the paper.
  CHECK(view(Point{Length::mm(0), Length::mm(400)}).y < middle.y);
}

TEST_CASE("labels never take a place twice nor leave their room", "[draw]") {
  Svg svg = page();
  Labels labels({0, 0, 50, 20});
  const TextStyle style{3};
  CHECK(labels.put(svg, "first", style, {{5, 10}}));
  CHECK_FALSE(labels.put(svg, "second", style, {{6, 10}}));
  CHECK(labels.put(svg, "second", style, {{6, 10}, {5, 16}}));
  CHECK_FALSE(labels.put(svg, "out", style, {{48, 10}}));
  CHECK(count_of(svg.str(), "<text") == 2);
}

TEST_CASE("labels stay off lines that are kept clear", "[draw]") {
  Svg svg = page();
  Labels labels({0, 0, 50, 50});
  labels.keep_clear(std::vector<PaperPoint>{{0, 0}, {50, 50}});
  CHECK_FALSE(labels.put(svg, "words", {3}, {{20, 25}}));
  CHECK(labels.put(svg, "words", {3}, {{30, 10}}));
}

TEST_CASE("texts along lines are read from below or from the right", "[draw]") {
  CHECK(turn_along({0, 0}, {10, 0}) == 0);
  CHECK(turn_along({10, 0}, {0, 0}) == 0);
  CHECK(turn_along({0, 10}, {0, 0}) == Approx(-90));
  CHECK(turn_along({0, 0}, {0, 10}) == Approx(-90));
  CHECK(turn_along({0, 0}, {0.05, 10}) == Approx(-90.29).margin(0.01));  // upright but for a hair
  CHECK(turn_along({0, 0}, {10, 10}) == Approx(45));
}

TEST_CASE("a dimension of no length is not drawn", "[draw]") {
  Svg svg = page();
  Labels labels({0, 0, 200, 100});
  CHECK(dimension(svg, labels, {5, 5}, {5, 5}, 5, Length{}, Units::metric));
  CHECK(count_of(svg.str(), "0 mm<") == 0);
}

TEST_CASE("a dimension without a place for its words is not drawn", "[draw]") {
  Svg svg = page();
  Labels labels({0, 0, 200, 100});
  labels.keep_clear(PaperBox{0, 0, 200, 100});
  CHECK_FALSE(dimension(svg, labels, {50, 50}, {60, 50}, 5, Length::mm(100), Units::metric));
  CHECK(count_of(svg.str(), "<text") + count_of(svg.str(), "<line") == 0);
}

TEST_CASE("a dimension strikes out no words", "[draw]") {
  Svg svg = page();
  Labels labels({0, 0, 200, 100});
  labels.keep_clear({70, 46}, "words", TextStyle{3});
  CHECK_FALSE(dimension(svg, labels, {50, 50}, {100, 50}, 5, Length::mm(100), Units::metric));
  CHECK(dimension(svg, labels, {50, 50}, {100, 50}, 10, Length::mm(100), Units::metric));
}

TEST_CASE("a dimension's words move along where its middle is taken", "[draw]") {
  Svg svg = page();
  Labels labels({0, 0, 200, 100});
  labels.keep_clear(std::vector<PaperPoint>{{75, 0}, {75, 100}});
  CHECK(dimension(svg, labels, {50, 50}, {100, 50}, 5, Length::mm(100), Units::metric));
  CHECK(count_of(svg.str(), ">100 mm<") == 1);
}

TEST_CASE("a dimension in US units has both where they fit between its arrows", "[draw]") {
  Svg svg = page();
  Labels labels({0, 0, 200, 100});
  CHECK(dimension(svg, labels, {50, 50}, {100, 50}, 5, Length::inches(2), Units::us));
  CHECK(dimension(svg, labels, {50, 80}, {60, 80}, 5, Length::inches(3), Units::us));
  CHECK(count_of(svg.str(), ">2 in (50.8 mm)<") == 1);
  CHECK(count_of(svg.str(), ">3 in<") == 1);
}

TEST_CASE("notes fill the foot line by line and keep all words of three lines", "[draw]") {
  Paper paper("a", "title", "job", Units::metric, "d");
  const std::string sentence = std::string(100, 'n') + ".";
  paper.notes({sentence, "short.", sentence, "last."});
  const std::string svg = paper.svg.str();
  CHECK(count_of(svg, sentence + " short.</text>") == 1);
  CHECK(count_of(svg, sentence + " last.</text>") == 1);
}

TEST_CASE("callouts that find no room come back", "[draw]") {
  Svg svg = page();
  Labels labels({0, 0, 200, 100});
  const std::vector<std::string> without = callouts(
      svg, labels, 100, {0, 0, 200, 10}, {{{1, 1}, "one"}, {{1, 3}, "two"}, {{1, 5}, "three"}});
  CHECK(without == std::vector<std::string>{"three"});
  CHECK(count_of(svg.str(), "<text") == 2);
}

TEST_CASE("lengths stand in both units where the job is in US units", "[draw]") {
  CHECK(both_units(Length::inches(94), Units::us) == "94 in (2387.6 mm)");
  CHECK(both_units(Length::mm(2390), Units::metric) == "2390 mm");
}

TEST_CASE("a long title is cut before it reaches the job's name", "[draw]") {
  Paper paper("a", std::string(200, 'W'), std::string(200, 'M'), Units::metric, "d");
  CHECK(count_of(paper.svg.str(), "…</text>") == 2);
}
