// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include <cmath>

#include "strikeoff/read_job.h"

using namespace strikeoff;

namespace {

ReadResult read_with(const std::string& base, const std::string& in_slab = "") {
  return read_job(R"({"slabs": [{"base": {)" + base + R"(}, "thickness": "40 mm")" + in_slab +
                  R"(}], "mix": "fine-20kg"})");
}

Slab slab_of(const std::string& base, const std::string& in_slab = "") {
  const ReadResult result = read_with(base, in_slab);
  INFO(render_diagnostics(result.diagnostics, "job.json", ""));
  REQUIRE(result.job.has_value());
  return result.job->slabs.at(0);
}

std::string first_error(const std::string& base) {
  const ReadResult result = read_with(base);
  return result.diagnostics.empty() ? "" : result.diagnostics.front().code;
}

void check_point(const Point& point, double x_mm, double y_mm) {
  CHECK(point.x.in_mm() == Approx(x_mm).margin(1e-6));
  CHECK(point.y.in_mm() == Approx(y_mm).margin(1e-6));
}

std::vector<int> numbers(const Slab& slab, int Side::*number) {
  std::vector<int> list;
  for (const Side& side : slab.sides) list.push_back(side.*number);
  return list;
}

}  // namespace

TEST_CASE("a walk that closes keeps its corners exactly", "[job]") {
  const Slab slab = slab_of(R"("runs": ["E 76 in", "n 24 in", "  W  6 ft 4 in", "S 24\""])");
  CHECK(slab.base == corners_of({{}, Length::inches(76), Length::inches(24)}));
  CHECK(slab.closing->by == Length{});
  // 200 in in all; a 500th of it is more than 3 mm.
  CHECK(slab.closing->allowed.in_mm() == Approx(200 * 25.4 / 500));
  CHECK(numbers(slab, &Side::number) == std::vector<int>{1, 2, 3, 4});
  CHECK(numbers(slab, &Side::corner) == std::vector<int>{1, 2, 3, 4});
  CHECK(slab.sides[2].name == "edge 3");
}

TEST_CASE("the error of a walk is spread by the share of the way walked", "[job]") {
  const Slab slab = slab_of(R"("runs": ["E 1600 mm", "N 900 mm", "W 1602 mm", "S 898 mm"])");
  // 5000 mm in all; it ends at (1600 - 1602, 900 - 898) = (-2, 2), so each corner moves by
  // (2, -2) times the share walked: 1600/5000 = 0.32, 2500/5000 = 0.5, 4102/5000 = 0.8204.
  REQUIRE(slab.base.size() == 4);
  check_point(slab.base[0], 0, 0);
  check_point(slab.base[1], 1600 + 0.64, -0.64);
  check_point(slab.base[2], 1600 + 1, 900 - 1);
  check_point(slab.base[3], -2 + 1.6408, 900 - 1.6408);
  CHECK(slab.closing->by.in_mm() == Approx(2 * std::sqrt(2.0)));
  CHECK(slab.closing->allowed == Length::mm(10));
}

TEST_CASE("a short walk may miss by 3 mm and no more", "[job]") {
  // 997 mm in all, a 500th of it is 2 mm: 3 mm is the larger.
  CHECK(slab_of(R"("runs": ["E 300 mm", "N 200 mm", "W 297 mm", "S 200 mm"])").closing->by ==
        Length::mm(3));
  CHECK(first_error(R"("runs": ["E 300 mm", "N 200 mm", "W 296.9 mm", "S 200 mm"])") ==
        "walk-not-closed");
}

TEST_CASE("bearings run from north or south towards east or west", "[job]") {
  const double h = 500 * std::sqrt(3.0);  // of an equilateral triangle with sides of 1 m
  for (const char* up : {"N 30 W 1 m", "n30w 1 m", "N 30\u00B0 W 1 m", "N 30.0 W 1000 mm"}) {
    INFO(up);
    const Slab slab = slab_of(std::string(R"("runs": ["E 1 m", ")") + up + R"(", "S 30 W 1 m"])");
    REQUIRE(slab.base.size() == 3);
    check_point(slab.base[1], 1000, 0);
    check_point(slab.base[2], 500, h);
    CHECK(slab.closing->by < Length::nm(1));
  }
  // The four quarters: a square on its tip, by words and by bearings.
  const Slab words = slab_of(R"("runs": ["SE 1 m", "NE 1 m", "NW 1 m", "SW 1 m"])");
  const Slab bearings =
      slab_of(R"("runs": ["S 45 E 1 m", "N 45 E 1 m", "N 45 W 1 m", "S 45 W 1 m"])");
  for (std::size_t k = 0; k < 4; ++k) {
    check_point(bearings.base[k], words.base[k].x.in_mm(), words.base[k].y.in_mm());
  }
  check_point(words.base[2], 1000 * std::sqrt(2.0), 0);
  // Right angles are exact.
  CHECK(slab_of(R"("runs": ["N 90 E 2 m", "N 0 E 1 m", "S 90 W 2 m", "S 0 W 1 m"])").base ==
        corners_of({{}, Length::m(2), Length::m(1)}));
}

TEST_CASE("a clockwise walk is turned and edges and corners keep their numbers", "[job]") {
  const Slab slab = slab_of(R"("runs": ["N 24 in", "E 76 in", "S 24 in", "W 76 in"],
      "x-note": "clockwise")");
  CHECK(slab.base == corners_of({{}, Length::inches(76), Length::inches(24)}));
  CHECK(numbers(slab, &Side::number) == std::vector<int>{4, 3, 2, 1});
  CHECK(numbers(slab, &Side::corner) == std::vector<int>{1, 4, 3, 2});
}

TEST_CASE("corners make any simple outline and keep their numbers when turned", "[job]") {
  const std::string forward =
      R"("corners": [["0 m","0 m"],["2 m","0.2 m"],["1.8 m","1 m"],["1 m","0.7 m"],["0.1 m","1.1 m"]])";
  const std::string backward =
      R"("corners": [["0 m","0 m"],["0.1 m","1.1 m"],["1 m","0.7 m"],["1.8 m","1 m"],["2 m","0.2 m"]])";
  const Slab a = slab_of(forward), b = slab_of(backward);
  CHECK(a.base == b.base);
  CHECK(numbers(a, &Side::corner) == std::vector<int>{1, 2, 3, 4, 5});
  CHECK(numbers(b, &Side::number) == std::vector<int>{5, 4, 3, 2, 1});
  CHECK(numbers(b, &Side::corner) == std::vector<int>{1, 5, 4, 3, 2});
  CHECK_FALSE(a.closing.has_value());
}

TEST_CASE("a corner of 15 degrees is the sharpest that is read", "[job]") {
  // tan 15 degrees = 0.267949: 1 m along and that much up; then a little less.
  CHECK(first_error(R"("corners": [["0 m","0 m"],["1 m","0 m"],["1 m","0.26796 m"]])").empty());
  CHECK(first_error(R"("corners": [["0 m","0 m"],["1 m","0 m"],["1 m","0.26794 m"]])") ==
        "sharp-corner");
}

TEST_CASE("the first diagonal of a rectangle sets it askew and the second must agree", "[job]") {
  const Slab slab = slab_of(
      R"("rectangle": {"length": "4 m", "depth": "3 m", "diagonals": ["5.02 m", "4.98 m"]})");
  // x = (5.02^2 - 4^2 - 3^2)/(2 x 4) = 0.2004/8 = 0.02505 m, y = sqrt(9 - 0.02505^2).
  const double y = 1000 * std::sqrt(9 - 0.02505 * 0.02505);
  REQUIRE(slab.base.size() == 4);
  check_point(slab.base[0], 0, 0);
  check_point(slab.base[1], 4000, 0);
  check_point(slab.base[2], 4025.05, y);
  check_point(slab.base[3], 25.05, y);
  // 2 to 4: 2 (4^2 + 3^2) - 5.02^2 = 24.7996, whose root is 4.9799197 m.
  CHECK(slab.diagonal->by.in_mm() == Approx(1000 * (4.98 - std::sqrt(24.7996))).margin(1e-6));
  CHECK(slab.diagonal->allowed == Length::mm(3));
  CHECK(slab.sides[3].name == "left");
  CHECK(numbers(slab, &Side::corner) == std::vector<int>{1, 2, 3, 4});
  CHECK(first_error(R"("rectangle": {"length": "4 m", "depth": "3 m"},
                       "diagonals": ["5.02 m", "4.976 m"])") == "diagonals-disagree");
}

TEST_CASE("equal diagonals leave a rectangle exactly square", "[job]") {
  const std::string sides = R"("rectangle": {"length": "76 in", "depth": "24 in"})";
  const Slab slab = slab_of(sides + R"(, "diagonals": ["79 11/16 in", "79 11/16 in"])");
  CHECK(slab.base == corners_of({{}, Length::inches(76), Length::inches(24)}));
  // The true diagonal is sqrt(76^2 + 24^2) = 79.69944 in; the tape shows 1/16 in.
  CHECK(slab.diagonal->by.in_mm() == Approx(25.4 * (std::sqrt(6352.0) - 79.6875)));
  CHECK_FALSE(slab_of(sides).diagonal.has_value());
}

TEST_CASE("walls and overhangs reach slanted sides by number", "[job]") {
  const Slab slab =
      slab_of(R"("corners": [["0 m","0 m"],["0 m","1 m"],["2 m","0 m"]])",
              R"(, "walls": [2], "overhang": {"all": "30 mm", "edges": {"edge 1": "20 mm"}})");
  // Clockwise as written: edge 2 is the slanted one, edge 1 the left.
  REQUIRE(slab.sides.size() == 3);
  CHECK(numbers(slab, &Side::number) == std::vector<int>{3, 2, 1});
  CHECK(slab.sides[0].overhang == Length::mm(30));
  CHECK(slab.sides[1].wall);
  CHECK(slab.sides[1].overhang == Length{});
  CHECK(slab.sides[2].overhang == Length::mm(20));
}
