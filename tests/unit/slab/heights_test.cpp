// SPDX-License-Identifier: MIT
#include "slab/heights.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

constexpr double pi = std::numbers::pi;

Slab rectangle(double length, double depth) {
  return slab_on(corners_of({{}, mm(length), mm(depth)}), {}, mm(40));
}

Slab with_levels(Slab slab, const std::vector<LevelReading>& levels) {
  slab.levels = levels;
  return slab;
}

LevelReading reading(double x, double y, double low) {
  return {{mm(x), mm(y)}, mm(low)};
}

Point at(double x, double y) {
  return {mm(x), mm(y)};
}

double low_mm(const Heights& heights, double x, double y) {
  return heights.low.at(at(x, y)).in_mm();
}

double cubic_inches(Volume v) {
  return in_cubic_feet(v) * 1728;
}

LevelReading inches(double x, double y, double low) {
  return {{in(x), in(y)}, in(low)};
}

}  // namespace

TEST_CASE("a slab without readings and without a fall has no heights", "[heights]") {
  const Slab slab = rectangle(1000, 500);
  const Heights heights(slab);
  CHECK(heights.are_none());
  CHECK(heights.low.at(at(300, 200)) == Length{});
  CHECK(heights.rise.at(at(300, 200)) == Length{});
  CHECK(heights.low.most(at(0, 0), at(1000, 0)) == Length{});
  CHECK(heights.under(outline_of(slab.base)) == Volume{});
  CHECK(Heights(with_levels(slab, {reading(0, 0, 7), reading(1000, 0, 7), reading(0, 500, 7)}))
            .are_none());
}

TEST_CASE("a plane over a rectangle holds its area times the mean of its corners", "[heights]") {
  // Geometry, from memory (CRC Standard Mathematical Tables): V = A x mean of 4 corner depths of a
  // planar slope. Depths 2, 2, 1.25, 1.25 in on 36 x 72 in make 2592 in2 x 1.625 in = 4212 in3. A
  // reading of 0 in the same plane far away is where depth begins: the plane falls 0.75 in over
  // 72 in, so it is 0 at y = 192 in.
  const Slab slab = with_levels(slab_on(corners_of({{}, in(36), in(72)}), {}, in(2)),
                                {inches(0, 0, 2), inches(36, 0, 2), inches(0, 192, 0)});
  CHECK(cubic_inches(Heights(slab).under(outline_of(slab.base))) == Approx(4212).epsilon(1e-12));
}

TEST_CASE("heights along a line are exact over creases and over a twisted surface", "[heights]") {
  // One corner of a rectangle 10 low: low = 10 (x/1000)(y/500), so its mean along the diagonal is
  // 10/3, along the right side 5 and along the front 0. Five readings meet in creases: low is 10 in
  // the middle and 0 at the corners, so its mean along the diagonal is 5.
  const Slab twisted = with_levels(
      rectangle(1000, 500),
      {reading(0, 0, 0), reading(1000, 0, 0), reading(1000, 500, 10), reading(0, 500, 0)});
  const Heights heights(twisted);
  const double diagonal = std::hypot(1000, 500);
  const auto along_mm2 = [](const Heights& h, const Point& a, const Point& b) {
    return h.both.along(a, b).si() * 1e6;
  };
  CHECK(along_mm2(heights, at(0, 0), at(1000, 500)) == Approx(diagonal * 10 / 3));
  CHECK(along_mm2(heights, at(1000, 500), at(1000, 0)) == Approx(500 * 5));
  CHECK(along_mm2(heights, at(0, 0), at(1000, 0)) == Approx(0).margin(1e-9));
  const Heights creased(with_levels(rectangle(1000, 500),
                                    {reading(0, 0, 0), reading(1000, 0, 0), reading(1000, 500, 0),
                                     reading(0, 500, 0), reading(500, 250, 10)}));
  CHECK(along_mm2(creased, at(0, 0), at(1000, 500)) == Approx(diagonal * 5));
  CHECK(Heights(rectangle(1000, 500)).both.along(at(0, 0), at(1000, 0)) == Area{});
}

TEST_CASE("a plane over a triangle holds its area times the mean of its corners", "[heights]") {
  // From memory (the same): 50 in2 with depths 1, 2, 3 in hold 100 in3. Triangle 10 x 10 in;
  // depth = 1 + 0.1 x + 0.2 y, less the least reading, which is made 0 at (-10, 0).
  const Polygon triangle{{in(0), in(0)}, {in(10), in(0)}, {in(0), in(10)}};
  const Slab slab = with_levels(slab_on(triangle, {}, in(2)),
                                {inches(-10, 0, 0), inches(10, 0, 2), inches(0, 10, 3)});
  CHECK(cubic_inches(Heights(slab).under(outline_of(triangle))) == Approx(100).epsilon(1e-12));
}

TEST_CASE("a plane over an L holds its area times the depth at its centroid", "[heights]") {
  // From memory (the same): L of 3575 in2 with its centroid at x = 36.33217 in; depth 2 - 0.01 x:
  // 3575 x 2 - 0.01 x (96 x 25 x 48 + 25 x 47 x 12.5) = 7150 - 1298.875 = 5851.125 in3. The mean of
  // the six corners would give 5708.083.
  const Polygon l{{in(0), in(0)},   {in(96), in(0)},  {in(96), in(25)},
                  {in(25), in(25)}, {in(25), in(72)}, {in(0), in(72)}};
  const Slab slab =
      with_levels(slab_on(l, {}, in(2)), {inches(0, 0, 2), inches(0, 72, 2), inches(200, 0, 0)});
  CHECK(cubic_inches(Heights(slab).under(outline_of(l))) == Approx(5851.125).epsilon(1e-12));
}

TEST_CASE("four readings at the corners of a rectangle hold its area times their mean",
          "[heights]") {
  const Slab slab = with_levels(rectangle(2000, 600), {reading(0, 0, 3), reading(2000, 0, 9),
                                                       reading(2000, 600, 4), reading(0, 600, 12)});
  const Heights heights(slab);
  // The smallest, 3, is taken off all: the mean of 0, 6, 1, 9 mm is 4 mm; 1.2 m2 x 4 mm = 4.8 L.
  CHECK(in_litres(heights.under(outline_of(slab.base))) == Approx(4.8).epsilon(1e-12));
  CHECK(low_mm(heights, 1000, 300) == Approx(4));
  // Straight along every side and on beyond it.
  CHECK(low_mm(heights, 1000, 0) == Approx(3));
  CHECK(low_mm(heights, 2500, 0) == Approx(7.5));
}

TEST_CASE("four readings hold at the corners of any convex quadrilateral", "[heights]") {
  // In any order, and the surface is that of a trapezium worked by hand: corners (0,0) (4,0) (3,2)
  // (1,2), in metres, 8 mm low at the third and 0 elsewhere. Mid-lines: from (0.5,1) to (3.5,1),
  // u = (x - 2)/1.5, and from (2,0) to (2,2), v = y - 1. Corners at u = -4/3, 4/3, 2/3, -2/3.
  // a + b u + c v + d u v = 0, 0, 8, 0: front: a - c = 0 and b - d = 0; back: a + c = 4 and
  // 2/3 (b + d) = 4. So a = c = 2, b = d = 3. At (2, 1) it is a = 2 mm.
  const Heights heights(with_levels(
      rectangle(4000, 2000),
      {reading(3000, 2000, 8), reading(0, 0, 0), reading(1000, 2000, 0), reading(4000, 0, 0)}));
  CHECK(low_mm(heights, 0, 0) == Approx(0).margin(1e-9));
  CHECK(low_mm(heights, 4000, 0) == Approx(0).margin(1e-9));
  CHECK(low_mm(heights, 3000, 2000) == Approx(8));
  CHECK(low_mm(heights, 1000, 2000) == Approx(0).margin(1e-9));
  CHECK(low_mm(heights, 2000, 1000) == Approx(2));
  CHECK(low_mm(heights, 3500, 1000) == Approx(5));
}

TEST_CASE("a square frustum is a base with a raised middle", "[heights]") {
  // A pyramid's frustum between 10 x 10 in and 6 x 6 in, 12 in high, holds 784 in3 (prismatoid
  // formula, from memory): here as the hollow over a base that falls to its outer corners. Each
  // side is a trapezium whose corners lie on one circle and in one plane.
  std::vector<LevelReading> levels;
  for (const double half : {3.0, 5.0}) {
    for (const auto& [x, y] : {std::pair{-1, -1}, {1, -1}, {1, 1}, {-1, 1}}) {
      levels.push_back(inches(half * x, half * y, half == 3 ? 0 : 12));
    }
  }
  const Slab slab =
      with_levels(slab_on(corners_of({{in(-5), in(-5)}, in(10), in(10)}), {}, in(2)), levels);
  CHECK(cubic_inches(Heights(slab).under(outline_of(slab.base))) ==
        Approx(10 * 10 * 12 - 784).epsilon(1e-12));
}

TEST_CASE("corners of a square beside a fifth reading are a fan about their mean", "[heights]") {
  // The square's own corners with one 8 mm low: its middle is 8/4 mm. The fifth reading is off the
  // circle, so the square stays a cell of its own.
  const Heights heights(with_levels(rectangle(1000, 1000),
                                    {reading(0, 0, 8), reading(1000, 0, 0), reading(0, 1000, 0),
                                     reading(1000, 1000, 0), reading(2000, 500, 0)}));
  CHECK(low_mm(heights, 500, 500) == Approx(2));
  // Half way from the low corner to the middle.
  CHECK(low_mm(heights, 250, 250) == Approx(5));
  CHECK(low_mm(heights, 0, 0) == Approx(8));
  CHECK(low_mm(heights, 250, 0) == Approx(6));
  CHECK(low_mm(heights, 750, 750) == Approx(1));
  // Four triangles of 1/4 m2 with means of (8 + 0 + 2)/3, twice, and (0 + 0 + 2)/3 mm, twice.
  const Slab square = rectangle(1000, 1000);
  CHECK(in_litres(heights.under(outline_of(square.base))) == Approx(2).epsilon(1e-12));
}

TEST_CASE("a regular hexagon is six triangles about its middle", "[heights]") {
  // One corner 6 mm low: the middle is 1 mm low. Two triangles have a mean of (6 + 0 + 1)/3 mm and
  // four of 1/3: 1 mm in all. Area 3/2 sqrt(3) for side 1 m.
  std::vector<LevelReading> levels;
  Polygon hexagon;
  for (int k = 0; k < 6; ++k) {
    const double x = 1000 * std::cos(k * pi / 3), y = 1000 * std::sin(k * pi / 3);
    hexagon.push_back(at(x, y));
    levels.push_back(reading(x, y, k == 2 ? 6 : 0));
  }
  const Heights heights(with_levels(slab_on(hexagon, {}, mm(40)), levels));
  CHECK(in_litres(heights.under(outline_of(hexagon))) ==
        Approx(1.5 * std::sqrt(3.0)).epsilon(1e-9));
  CHECK(low_mm(heights, 0, 0) == Approx(1));
  CHECK(low_mm(heights, 0, -800) == Approx(1 - 0.8 / std::sqrt(0.75)));
}

TEST_CASE("a grid of nine readings is worked square by square", "[heights]") {
  std::vector<LevelReading> levels;
  for (int x = 0; x < 3; ++x) {
    for (int y = 0; y < 3; ++y)
      levels.push_back(reading(500 * x, 500 * y, x == 1 && y == 1 ? 6 : 0));
  }
  const Slab slab = with_levels(rectangle(1000, 1000), levels);
  const Heights heights(slab);
  // Each square of 0.25 m2 has one corner 6 mm low: 6/4 mm x 1 m2.
  CHECK(in_litres(heights.under(outline_of(slab.base))) == Approx(1.5).epsilon(1e-12));
  CHECK(low_mm(heights, 500, 500) == Approx(6));
  CHECK(heights.low.most(at(0, 500), at(1000, 500)).in_mm() == Approx(6));
  CHECK(heights.low.most(at(0, 0), at(1000, 0)).in_mm() == Approx(0).margin(1e-9));
}

TEST_CASE("beyond the readings the nearest place of their hull holds", "[heights]") {
  // A square with its middle; the back right corner is 8 mm low, the middle 1.
  const Heights heights(with_levels(rectangle(1000, 1000),
                                    {reading(0, 0, 0), reading(1000, 0, 0), reading(1000, 1000, 8),
                                     reading(0, 1000, 0), reading(500, 500, 1)}));
  CHECK(low_mm(heights, 1500, 500) == Approx(4));
  CHECK(low_mm(heights, 1300, 1200) == Approx(8));
  CHECK(low_mm(heights, -300, 1200) == Approx(0).margin(1e-9));
  CHECK(low_mm(heights, 400, 1700) == Approx(3.2));
  // On the line x = 1.2 m it rises to the corner's level and stays there.
  CHECK(heights.low.most(at(1200, 0), at(1200, 750)).in_mm() == Approx(6));
  CHECK(heights.low.most(at(1200, 0), at(1200, 4000)).in_mm() == Approx(8));
  // Right of the square lies a strip 0.2 m wide with a mean of 4 mm, and beyond its back a
  // rectangle of 0.2 x 0.5 m at 8 mm: 0.8 + 0.8 L.
  const Outline beside = outline_of(corners_of({at(1000, 0), mm(200), mm(1500)}));
  CHECK(in_litres(heights.under(beside)) == Approx(1.6).epsilon(1e-12));
}

TEST_CASE("four readings with one inside the others are three triangles", "[heights]") {
  const Heights heights(with_levels(
      rectangle(900, 900),
      {reading(0, 0, 0), reading(900, 0, 0), reading(0, 900, 0), reading(300, 300, 9)}));
  // A pyramid of 9 mm over 0.405 m2: a third of the box.
  const Polygon triangle{at(0, 0), at(900, 0), at(0, 900)};
  CHECK(in_litres(heights.under(outline_of(triangle))) == Approx(0.405 * 9 / 3).epsilon(1e-12));
  CHECK(low_mm(heights, 150, 150) == Approx(4.5));
  CHECK(low_mm(heights, -100, 450) == Approx(0).margin(1e-9));
}

TEST_CASE("a reading a hair inside the line of its neighbours counts as on it", "[heights]") {
  for (const double hair : {-0.5, 0.0, 0.5}) {
    const Heights heights(with_levels(
        rectangle(2000, 600), {reading(0, 0, 0), reading(1000, hair, 10), reading(2000, 0, 0),
                               reading(2000, 600, 0), reading(0, 600, 0)}));
    CHECK(heights.low.most(at(0, -25), at(2000, -25)).in_mm() == Approx(10).margin(1e-6));
    CHECK(low_mm(heights, 500, -25) == Approx(5).margin(0.01));
  }
}

TEST_CASE("the greatest low on a line of a twisted base is at the parabola's top", "[heights]") {
  // Bilinear with 8 mm at two opposite corners: low = 8 (1 - x) y + 8 x (1 - y)... on the diagonal
  // from (0,0) to (1,1) that is 16 t (1 - t), which is 4 mm at t = 1/2 and nothing at its ends.
  const Heights heights(with_levels(
      rectangle(1000, 1000),
      {reading(0, 0, 0), reading(1000, 0, 8), reading(1000, 1000, 0), reading(0, 1000, 8)}));
  CHECK(heights.low.most(at(0, 0), at(1000, 1000)).in_mm() == Approx(4));
  CHECK(heights.low.most(at(0, 0), at(250, 250)).in_mm() == Approx(3));
}

TEST_CASE("the top rises backwards from the outermost line of its low side", "[heights]") {
  Slab slab = rectangle(1000, 600);
  slab.sides[0].overhang = mm(50);
  slab.fall = Fall{0.02, 0};
  const Heights heights(slab);
  CHECK(heights.rise.at(at(300, -50)).in_mm() == Approx(0).margin(1e-9));
  CHECK(heights.rise.at(at(300, 600)).in_mm() == Approx(13));
  CHECK(heights.rise.most(at(0, 100), at(1000, 100)).in_mm() == Approx(3));
  // 1 x 0.65 m with 6.5 mm in the mean.
  const Outline edge = outline_of(corners_of({at(0, -50), mm(1000), mm(650)}));
  CHECK(in_litres(heights.over(edge)) == Approx(0.65 * 6.5).epsilon(1e-12));
}

TEST_CASE("a fall over an outline that reaches past its low side leaves no place thin",
          "[heights]") {
  // A U whose right leg reaches 200 mm further to the front than the left one, with the left
  // leg's end as low side.
  const Polygon u{at(0, 0),      at(300, 0),    at(300, 500), at(600, 500),
                  at(600, -200), at(900, -200), at(900, 800), at(0, 800)};
  Slab slab = slab_on(u, {}, mm(40));
  slab.fall = Fall{0.01, 0};
  const Heights heights(slab);
  CHECK(heights.rise.at(at(700, -200)).in_mm() == Approx(0).margin(1e-9));
  CHECK(heights.rise.at(at(100, 0)).in_mm() == Approx(2));
}

TEST_CASE("volumes over rounded outlines and openings are exact", "[heights]") {
  // low = 10 mm x x/1 m: over a disc of radius 0.2 m about x = 0.5 m it is area x 5 mm.
  const Heights heights(with_levels(rectangle(1000, 1000),
                                    {reading(0, 0, 0), reading(1000, 0, 10), reading(0, 1000, 0)}));
  const Outline disc = outline_of(Rectangle{at(300, 300), mm(400), mm(400)}, mm(200));
  CHECK(in_litres(heights.under(disc)) == Approx(pi * 0.04 * 5).epsilon(1e-12));
  // Two squares with a crease at x = 0.5 m, low = 10 mm x |x - 0.5|/0.5 over the same disc: the
  // half disc's centroid is 4 r/(3 pi) from the crease.
  const Heights creased(
      with_levels(rectangle(1000, 1000),
                  {reading(0, 0, 10), reading(500, 0, 0), reading(1000, 0, 10),
                   reading(0, 1000, 10), reading(500, 1000, 0), reading(1000, 1000, 10)}));
  CHECK(in_litres(creased.under(disc)) ==
        Approx(pi * 0.04 * 20 * 4 * 0.2 / (3 * pi)).epsilon(1e-12));
}
