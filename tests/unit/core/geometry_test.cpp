// SPDX-License-Identifier: MIT
#include "strikeoff/geometry.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "support/slabs.h"

using namespace strikeoff;
using strikeoff::test::in;

namespace {

Polygon inches(const std::vector<std::pair<double, double>>& corners) {
  Polygon polygon;
  for (const auto& [x, y] : corners) polygon.push_back({in(x), in(y)});
  return polygon;
}

double square_inches(Area a) {
  return in_square_feet(a) * 144;
}

Polygon grown(const Polygon& polygon, Length by) {
  return offset_edges(polygon, std::vector<Length>(polygon.size(), by));
}

const Polygon ell = inches({{0, 0}, {96, 0}, {96, 25}, {25, 25}, {25, 72}, {0, 72}});

}  // namespace

// Expected areas and lengths: elementary geometry (shoelace and mitred offset formulas), worked
// by hand and from memory of CRC Standard Mathematical Tables.

TEST_CASE("an outline grows by its offsets at mitred corners", "[geometry]") {
  const Polygon rectangle = corners_of({{}, in(92), in(26)});
  const std::vector<Length> outward{in(1), in(2), in(3), in(4)};
  CHECK(offset_edges(rectangle, outward) ==
        corners_of({{in(-4), in(-1)}, in(92 + 2 + 4), in(26 + 1 + 3)}));
}

TEST_CASE("an L has the area and perimeter worked by hand and its sign turns", "[geometry]") {
  CHECK(square_inches(signed_area(ell)) == Approx(3575).epsilon(1e-12));
  CHECK(perimeter(ell) == in(336));
  CHECK(square_inches(signed_area(Polygon(ell.rbegin(), ell.rend()))) ==
        Approx(-3575).epsilon(1e-12));
}

TEST_CASE("a pentagon out of square has the area of the shoelace formula", "[geometry]") {
  const Polygon pentagon = inches({{0, 0}, {7, 1}, {9, 5}, {4, 8}, {-1, 4}});
  CHECK(square_inches(signed_area(pentagon)) == Approx(51).epsilon(1e-12));
  CHECK(perimeter(pentagon).in_in() == Approx(27.9004).epsilon(1e-5));
}

TEST_CASE("mitred offsets have the areas of the closed formula", "[geometry]") {
  // A + P d + d2 times the sum of tan(turn/2).
  CHECK(square_inches(signed_area(grown(corners_of({{}, in(60), in(30)}), in(1)))) ==
        Approx(1984).epsilon(1e-12));
  CHECK(square_inches(signed_area(grown(corners_of({{}, in(60), in(30)}), in(-0.5)))) ==
        Approx(1711).epsilon(1e-12));
  CHECK(square_inches(signed_area(grown(ell, in(1)))) == Approx(3915).epsilon(1e-12));
  const Polygon triangle = inches({{0, 0}, {10, 0}, {5, 5 * std::sqrt(3.0)}});
  CHECK(square_inches(signed_area(grown(triangle, in(1)))) == Approx(78.49742).epsilon(1e-6));
}

TEST_CASE("an outline that touches itself is found and a simple one is not", "[geometry]") {
  CHECK_FALSE(self_contact(ell));
  const auto bow = self_contact(inches({{0, 0}, {10, 10}, {10, 0}, {0, 10}}));
  REQUIRE(bow);
  CHECK(*bow == std::pair<std::size_t, std::size_t>{0, 2});
  CHECK(self_contact(inches({{0, 0}, {10, 0}, {4, 0}, {4, 5}})));           // folds back
  CHECK(self_contact(inches({{0, 0}, {10, 0}, {10, 5}, {5, 0}, {0, 5}})));  // corner on an edge
  CHECK(self_contact(inches({{0, 5}, {5, 0}, {10, 5}, {10, 0}, {0, 0}})));  // the other way round
}

TEST_CASE("right angles and re-entrant corners are told from others", "[geometry]") {
  CHECK(is_right_angled(ell));
  CHECK_FALSE(is_right_angled(inches({{0, 0}, {5, 0}, {10, 0}, {10, 5}, {0, 5}})));
  CHECK_FALSE(is_right_angled(inches({{0, 0}, {10, 0}, {9, 5}, {0, 5}})));
  for (std::size_t k = 0; k < ell.size(); ++k) CHECK(is_convex_corner(ell, k) == (k != 3));
}

TEST_CASE("an edge that an offset swallows is named", "[geometry]") {
  const Polygon slot =
      inches({{0, 0}, {30, 0}, {30, 20}, {20, 20}, {20, 10}, {18, 10}, {18, 20}, {0, 20}});
  CHECK_FALSE(swallowed_edge(slot, grown(slot, in(0.5))));
  CHECK(swallowed_edge(slot, grown(slot, in(1))) == std::optional<std::size_t>{4});
}

TEST_CASE("a rectangle is inside an L only where the L is", "[geometry]") {
  CHECK(contains(ell, {{in(0), in(0)}, in(96), in(25)}));
  CHECK(contains(ell, {{in(5), in(30)}, in(20), in(42)}));
  CHECK_FALSE(contains(ell, {{in(5), in(30)}, in(20) + Length::nm(1), in(42)}));
  CHECK(square_inches(overlap(ell, {{in(20), in(20)}, in(10), in(10)})) == Approx(75));
  // A hall of 200 m, its whole floor: rounding must not throw it out.
  const Rectangle hall{{Length::m(1000.0001), Length::m(77.7)}, Length::m(200), Length::m(133.3)};
  CHECK(contains(grown(corners_of(hall), in(0)), hall));
  CHECK_FALSE(overlaps({{in(0), in(0)}, in(5), in(5)}, {{in(5), in(0)}, in(5), in(5)}));
  CHECK(overlaps({{in(0), in(0)}, in(5), in(5)}, {{in(4), in(4)}, in(5), in(5)}));
}

TEST_CASE("a point on the boundary is inside and one beside it is not", "[geometry]") {
  CHECK(contains(ell, Point{in(10), in(10)}));
  CHECK(contains(ell, Point{in(96), in(10)}));
  CHECK(contains(ell, Point{in(25), in(25)}));  // the inner corner
  CHECK(contains(ell, Point{in(0), in(0)}));
  CHECK_FALSE(contains(ell, Point{in(96) + Length::nm(1), in(10)}));
  CHECK_FALSE(contains(ell, Point{in(60), in(50)}));
  // Level with corners, where a ray meets two edges or none.
  CHECK_FALSE(contains(ell, Point{in(-1), in(25)}));
  CHECK_FALSE(contains(ell, Point{in(-1), in(72)}));
  CHECK_FALSE(contains(ell, Point{in(97), in(25)}));
  const Polygon diamond = inches({{0, -5}, {5, 0}, {0, 5}, {-5, 0}});
  CHECK(contains(diamond, Point{in(0), in(0)}));
  CHECK_FALSE(contains(diamond, Point{in(-6), in(0)}));
  CHECK(contains(diamond, Point{in(2.5), in(2.5)}));
}

TEST_CASE("the distance of a point and of an outline is to the boundary", "[geometry]") {
  CHECK(distance(Point{in(10), in(5)}, ell) == in(5));
  CHECK(distance(Point{in(28), in(29)}, ell) == in(3));  // to the inner side, from outside
  CHECK(distance(Point{in(99), in(-4)}, ell) == in(5));  // 3, 4, 5 to a corner
  const Polygon apart = inches({{99, 29}, {105, 29}, {105, 35}, {99, 35}});
  CHECK(distance(ell, apart) == in(5));
  CHECK(distance(apart, ell) == in(5));
  CHECK(distance(ell, inches({{90, 20}, {105, 20}, {105, 35}})) == Length{});
  // One inside the other: the gap between the boundaries.
  CHECK(distance(ell, inches({{5, 5}, {8, 5}, {8, 8}, {5, 8}})) == in(5));
}
