// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>

#include "core/outlines.h"
#include "core/vec.h"
#include "slab/heights.h"
#include "slab/measure.h"
#include "slab/triangulation.h"
#include "support/geos.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Point at(double x_mm, double y_mm) {
  return {mm(x_mm), mm(y_mm)};
}

/// Readings on whole millimetres inside 2.4 x 1.2 m, no two within 40 mm: three to twenty, or on a
/// grid, whose squares are fans.
std::vector<LevelReading> random_levels(Draw& draw) {
  std::vector<LevelReading> levels;
  if (draw.one_in(3)) {
    const int columns = draw.whole(2, 4), rows = draw.whole(2, 4);
    for (int x = 0; x < columns; ++x) {
      for (int y = 0; y < rows; ++y) {
        levels.push_back({at(300.0 * x, 300.0 * y), mm(draw.whole(0, 200) / 10.0)});
      }
    }
    return levels;
  }
  levels = {{at(0, 0), mm(draw.whole(0, 20))},
            {at(draw.whole(400, 2400), 0), mm(draw.whole(0, 20))},
            {at(draw.whole(0, 2400), draw.whole(300, 1200)), mm(draw.whole(0, 20))}};
  const int more = draw.whole(0, 17);
  for (int k = 0; k < more; ++k) {
    const Point place = at(draw.whole(0, 2400), draw.whole(0, 1200));
    const bool close = std::any_of(levels.begin(), levels.end(), [&](const LevelReading& other) {
      return distance(other.at, place) < mm(40);
    });
    if (!close) levels.push_back({place, mm(draw.whole(0, 200) / 10.0)});
  }
  return levels;
}

Slab random_slab(Draw& draw) {
  Slab slab = slab_on(random_outline(draw, mm(150)), mm(25), mm(50));
  slab.levels = random_levels(draw);
  return slab;
}

using Height = std::function<double(double, double)>;

/// The midpoint rule over squares of 5 mm, in m3. It is exact but for squares with a crease, where
/// it is out by an eighth of the change of slope times the side at most; these errors have both
/// signs. (Checked once with 1.25 mm: none of these runs differs by more than 1.1e-5.)
double numerical(const Height& height, const Polygon& outline) {
  const Rectangle box = bounding_box(outline);
  constexpr double side = 5;
  double sum = 0;
  for (double x = box.at.x.in_mm() + side / 2; x < (box.at.x + box.length).in_mm(); x += side) {
    for (double y = box.at.y.in_mm() + side / 2; y < (box.at.y + box.depth).in_mm(); y += side) {
      if (contains(outline, at(x, y))) sum += height(x, y);
    }
  }
  return sum * side * side / 1e9;
}

Point turned(const Point& p, double angle, const Point& by) {
  return {p.x * std::cos(angle) - p.y * std::sin(angle) + by.x,
          p.x * std::sin(angle) + p.y * std::cos(angle) + by.y};
}

/// How far p lies inside the circle through three places, in metres. The in-circle determinant over
/// twice the triangle's area is r2 - d2 (from memory: Guibas and Stolfi, 1985).
double inside_circle(Vec a, Vec b, Vec c, Vec p) {
  const double twice = cross(b - a, c - a);
  const double r = (b - a).length() * (c - b).length() * (a - c).length() / (2 * std::abs(twice));
  const Vec pa = a - p, pb = b - p, pc = c - p;
  const double determinant =
      dot(pa, pa) * cross(pb, pc) - dot(pb, pb) * cross(pa, pc) + dot(pc, pc) * cross(pa, pb);
  return r - std::sqrt(std::max(0.0, r * r - determinant / twice));
}

/// A reading that no other can have been taken for.
const LevelReading& least(const std::vector<LevelReading>& levels) {
  return *std::min_element(levels.begin(), levels.end(),
                           [](const auto& a, const auto& b) { return a.low < b.low; });
}

}  // namespace

TEST_CASE("volumes of base and top agree with numerical integration", "[properties]") {
  Draw draw(4201);
  for (int run = 0; run < 12; ++run) {
    Slab slab = random_slab(draw);
    slab.fall = Fall{draw.whole(1, 30) / 1000.0, static_cast<std::size_t>(draw.whole(0, 3))};
    const Heights heights(slab);
    const Polygon outline = sharp_outline(slab);
    const double low =
        numerical([&](double x, double y) { return heights.low.at(at(x, y)).in_mm(); }, outline);
    const double rise =
        numerical([&](double x, double y) { return heights.rise.at(at(x, y)).in_mm(); }, outline);
    CHECK(heights.under(outline_of(outline)).si() == Approx(low).epsilon(2e-4));
    CHECK(heights.over(outline_of(outline)).si() == Approx(rise).epsilon(1e-9));
  }
}

TEST_CASE("heights hold at every reading", "[properties]") {
  Draw draw(4202);
  for (int run = 0; run < 300; ++run) {
    const Slab slab = random_slab(draw);
    const Heights heights(slab);
    for (const LevelReading& reading : slab.levels) {
      const double expected = (reading.low - least(slab.levels).low).in_mm();
      // Within a millimetre of a side of the hull a reading counts as on it.
      CHECK(heights.low.at(reading.at).in_mm() == Approx(expected).margin(0.5));
    }
  }
}

TEST_CASE("heights do not jump", "[properties]") {
  Draw draw(4203);
  for (int run = 0; run < 100; ++run) {
    const Slab slab = random_slab(draw);
    const Heights heights(slab);
    // Readings 40 mm apart differ by 20 mm at most, so steps of a micrometre change little.
    const Point a = at(draw.whole(-400, 2800), draw.whole(-400, 1600));
    const Point b = at(draw.whole(-400, 2800), draw.whole(-400, 1600));
    for (int k = 0; k <= 1000; ++k) {
      const Point p = between(a, b, k / 1000.0);
      const Point q{p.x + Length::nm(700), p.y + Length::nm(700)};
      REQUIRE(std::abs((heights.low.at(p) - heights.low.at(q)).in_mm()) < 0.1);
    }
  }
}

TEST_CASE("the level line from which low is read does not matter", "[properties]") {
  Draw draw(4204);
  for (int run = 0; run < 100; ++run) {
    Slab slab = random_slab(draw);
    const Volume before = measure_slab(slab).level_correction;
    for (LevelReading& reading : slab.levels) reading.low += mm(137);
    CHECK(measure_slab(slab).level_correction.si() == Approx(before.si()).epsilon(1e-9));
  }
}

TEST_CASE("moving and turning the frame changes no volume and no greatest low", "[properties]") {
  Draw draw(4205);
  for (int run = 0; run < 100; ++run) {
    const Slab slab = random_slab(draw);
    const double angle = draw.whole(0, 628) / 100.0;
    const Point by = at(draw.whole(-5000, 5000), draw.whole(-5000, 5000));
    Slab moved = slab;
    for (Point& corner : moved.base) corner = turned(corner, angle, by);
    for (LevelReading& reading : moved.levels) reading.at = turned(reading.at, angle, by);
    const SlabPlan before = measure_slab(slab), after = measure_slab(moved);
    CHECK(after.level_correction.si() == Approx(before.level_correction.si()).margin(1e-10));
    CHECK(after.base_low.in_mm() == Approx(before.base_low.in_mm()).margin(1e-6));
    CHECK(after.thinnest.thickness.in_mm() ==
          Approx(before.thinnest.thickness.in_mm()).margin(1e-6));
  }
}

TEST_CASE("the greatest low of a line is reached on it and exceeded nowhere", "[properties]") {
  Draw draw(4206);
  for (int run = 0; run < 300; ++run) {
    const Slab slab = random_slab(draw);
    const Heights heights(slab);
    const Point a = at(draw.whole(-400, 2800), draw.whole(-400, 1600));
    const Point b = at(draw.whole(-400, 2800), draw.whole(-400, 1600));
    const Length most = heights.low.most(a, b);
    Length sampled = heights.low.at(a);
    for (int k = 1; k <= 2000; ++k)
      sampled = std::max(sampled, heights.low.at(between(a, b, k / 2000.0)));
    CHECK(most >= sampled - Length::nm(1));
    CHECK((most - sampled).in_mm() < 0.1);
  }
}

TEST_CASE("no place of the slab is thinner or thicker than the plan says", "[properties]") {
  Draw draw(4207);
  for (int run = 0; run < 60; ++run) {
    Slab slab = random_slab(draw);
    add_panel(slab, mm(draw.whole(-10, 20)), mm(12));
    if (draw.one_in(2)) slab.fall = Fall{draw.whole(1, 30) / 1000.0, 1};
    const Rectangle box = bounding_box(sharp_outline(slab));
    const SlabPlan shape = measure_slab(slab);
    const Heights heights(slab);
    double least = 1e9, most = -1e9;
    for (int i = 0; i <= 60; ++i) {
      for (int j = 0; j <= 60; ++j) {
        const Point p{box.at.x + box.length * (i / 60.0), box.at.y + box.depth * (j / 60.0)};
        if (!contains(shape.outline, p)) continue;
        const Length over = contains(shape.panel, p) ? mm(38) : mm(50);
        const double thick = (over + heights.low.at(p) + heights.rise.at(p)).in_mm();
        least = std::min(least, thick);
        most = std::max(most, thick);
      }
    }
    CHECK(shape.thinnest.thickness.in_mm() <= least + 1e-6);
    CHECK(shape.thickest.thickness.in_mm() >= most - 1e-6);
    const auto height_at = [&](const ThicknessAt& place) {
      return (heights.low.at(place.at) + heights.rise.at(place.at)).in_mm();
    };
    CHECK(shape.thinnest.thickness.in_mm() == Approx(38 + height_at(shape.thinnest)).margin(1e-6));
    CHECK(shape.thickest.thickness.in_mm() == Approx(50 + height_at(shape.thickest)).margin(1e-6));
  }
}

TEST_CASE("between readings the height is that of GEOS's Delaunay triangle", "[properties]") {
  Draw draw(4208);
  int compared = 0;
  for (int run = 0; run < 100; ++run) {
    const Slab slab = random_slab(draw);
    if (slab.levels.size() < 5) continue;
    const Heights heights(slab);
    Polygon places;
    for (const LevelReading& reading : slab.levels) places.push_back(reading.at);
    const auto low_at = [&](const Point& p) {  // GEOS gives the places back to the last bit but one
      const auto same = [&](const LevelReading& reading) {
        return distance(reading.at, p) < mm(0.001);
      };
      const auto found = std::find_if(slab.levels.begin(), slab.levels.end(), same);
      return (found->low - least(slab.levels).low).in_mm();
    };
    for (const Polygon& t : geos_delaunay(places)) {
      // Where four readings are nearly on one circle cells are joined, and flat triangles at the
      // hull's sides are none.
      const Vec a = vec(t[0]), b = vec(t[1]), c = vec(t[2]);
      const double longest = std::max({(b - a).length(), (c - b).length(), (a - c).length()});
      if (cross(b - a, c - a) / longest < 0.003) continue;
      const bool is_alone = std::all_of(places.begin(), places.end(), [&](const Point& place) {
        const Vec p = vec(place);
        const double nearest = std::min({(p - a).length(), (p - b).length(), (p - c).length()});
        return nearest < 1e-6 ||
               std::min({std::abs(inside_circle(a, b, c, p)), std::abs(inside_circle(a, b, p, c)),
                         std::abs(inside_circle(b, c, p, a)),
                         std::abs(inside_circle(c, a, p, b))}) > 0.002;
      });
      if (!is_alone) continue;
      const double u = draw.whole(1, 98) / 100.0, v = draw.whole(1, 99) / 100.0 * (1 - u);
      const Point p = between(between(t[0], t[1], u / (1 - v)), t[2], v);
      const double expected = low_at(t[0]) * (1 - u - v) + low_at(t[1]) * u + low_at(t[2]) * v;
      // A reading moved onto the hull's side by up to 1 mm takes its height with it.
      CHECK(heights.low.at(p).in_mm() == Approx(expected).margin(0.3));
      compared += std::abs(heights.low.at(p).in_mm() - expected) < 1e-6;
    }
  }
  CHECK(compared > 500);
}

TEST_CASE("readings on one circle make a fan about their mean", "[properties]") {
  Draw draw(4210);
  for (int run = 0; run < 50; ++run) {
    const int n = draw.whole(5, 9);
    std::vector<LevelReading> levels;
    Point middle;
    Length mean;
    for (int k = 0; k < n; ++k) {
      // On tenths of a millimetre: not quite on the circle.
      const double angle = (k + draw.whole(0, 60) / 100.0) * 6.283185 / n;
      levels.push_back(
          {at(std::round(7000 * std::cos(angle)) / 10, std::round(7000 * std::sin(angle)) / 10),
           mm(draw.whole(0, 20))});
      middle = {middle.x + levels.back().at.x / n, middle.y + levels.back().at.y / n};
      mean += levels.back().low / n;
    }
    Slab slab = slab_on(corners_of({at(-700, -700), mm(1400), mm(1400)}), {}, mm(50));
    slab.levels = levels;
    const Length highest = least(levels).low;
    const Heights heights(slab);
    CHECK(heights.low.at(middle).in_mm() == Approx((mean - highest).in_mm()).margin(1e-9));
    for (std::size_t k = 0; k < levels.size(); ++k) {
      const LevelReading &a = levels[k], &b = levels[(k + 1) % levels.size()];
      const double on_rim = draw.whole(0, 100) / 100.0, inwards = draw.whole(0, 100) / 100.0;
      const Point p = between(between(a.at, b.at, on_rim), middle, inwards);
      const Length rim = a.low + (b.low - a.low) * on_rim;
      const Length expected = rim + (mean - rim) * inwards - highest;
      CHECK(heights.low.at(p).in_mm() == Approx(expected.in_mm()).margin(1e-9));
    }
  }
}

TEST_CASE("the order of readings, mirrors and quarter turns change nothing", "[properties]") {
  Draw draw(4211);
  for (int run = 0; run < 300; ++run) {
    Slab slab = random_slab(draw);
    if (draw.one_in(3)) {  // many of one height
      for (LevelReading& reading : slab.levels) reading.low = mm(draw.whole(0, 2));
    }
    if (draw.one_in(2)) {  // a tape's millimetre decides what is on one circle
      for (LevelReading& reading : slab.levels) {
        reading.at.x += mm(draw.whole(-10, 10) / 10.0);
        reading.at.y += mm(draw.whole(-10, 10) / 10.0);
      }
    }
    Slab shuffled = slab, mirrored = slab, turned = slab;
    for (std::size_t k = slab.levels.size(); k > 1; --k) {
      std::swap(shuffled.levels[k - 1],
                shuffled.levels[static_cast<std::size_t>(draw.whole(0, static_cast<int>(k) - 1))]);
    }
    const auto move = [](Slab& one, auto moved) {
      for (Point& corner : one.base) corner = moved(corner);
      for (LevelReading& reading : one.levels) reading.at = moved(reading.at);
    };
    const auto mirror = [](const Point& p) { return Point{-p.x, p.y}; };
    const auto turn = [](const Point& p) { return Point{-p.y, p.x}; };
    move(mirrored, mirror);
    std::reverse(mirrored.base.begin(), mirrored.base.end());
    move(turned, turn);
    // The frame begins at the first corner, which is another one of the mirror image.
    const Heights plain(slab), same(shuffled), left(mirrored), up(turned);
    for (int k = 0; k < 20; ++k) {
      const Point p = at(draw.whole(-200, 2600), draw.whole(-200, 1400));
      const double low = plain.low.at(p).in_mm();
      CHECK(same.low.at(p).in_mm() == low);
      CHECK(left.low.at(mirror(p)).in_mm() == Approx(low).margin(1e-6));
      CHECK(up.low.at(turn(p)).in_mm() == Approx(low).margin(1e-6));
    }
    const SlabPlan one = measure_slab(slab), two = measure_slab(shuffled);
    CHECK(one.level_correction == two.level_correction);
    CHECK(one.base_low_at == two.base_low_at);
    CHECK(one.thinnest.at == two.thinnest.at);
    CHECK(one.thickest.at == two.thickest.at);
  }
}

TEST_CASE("readings far too dense for a millimetre make the same cells in any order and mirrored",
          "[properties]") {
  // Two rows, so near that most circles are within 1 mm of their neighbours' readings.
  Draw draw(4212);
  for (int run = 0; run < 200; ++run) {
    std::vector<Vec> spots;
    for (int k = 0; k < 12; ++k) {
      for (const int row : {0, 900}) {
        spots.push_back(vec(at(30 * k, row + draw.whole(0, 3) / 10.0)));
      }
    }
    std::vector<Vec> others(spots.rbegin(), spots.rend());
    for (Vec& spot : others) spot.x = -spot.x;
    const auto sorted_cells = [](const Cells& mesh, auto number) {
      std::vector<Ring> cells = mesh.rings;
      for (Ring& cell : cells) {
        for (std::size_t& corner : cell) corner = number(corner);
        std::sort(cell.begin(), cell.end());
      }
      std::sort(cells.begin(), cells.end());
      return cells;
    };
    const auto cells = sorted_cells(delaunay_cells(spots), [](std::size_t k) { return k; });
    const auto mirrored =
        sorted_cells(delaunay_cells(others), [&](std::size_t k) { return spots.size() - 1 - k; });
    CHECK(cells == mirrored);
  }
}

TEST_CASE("no reading lies inside the circle of a cell and the cells fill the hull",
          "[properties]") {
  Draw draw(4209);
  for (int run = 0; run < 200; ++run) {
    std::vector<Vec> spots;
    for (const LevelReading& reading : random_levels(draw)) spots.push_back(vec(reading.at));
    const Cells mesh = delaunay_cells(spots);
    const auto polygon = [&](const Ring& corners) {
      Polygon result;
      for (const std::size_t k : corners) result.push_back(point(mesh.spots[k]));
      return result;
    };
    double cells = 0;
    for (const Ring& cell : mesh.rings) {
      cells += signed_area(polygon(cell)).si();
      // The circle of a cell is best known from the largest triangle of its corners.
      Ring largest{cell[0], cell[1], cell[2]};
      for (std::size_t i = 0; i < cell.size(); ++i) {
        for (std::size_t j = i + 1; j < cell.size(); ++j) {
          for (std::size_t k = j + 1; k < cell.size(); ++k) {
            const Ring triangle{cell[i], cell[j], cell[k]};
            if (signed_area(polygon(triangle)) > signed_area(polygon(largest))) largest = triangle;
          }
        }
      }
      const Vec a = mesh.spots[largest[0]], b = mesh.spots[largest[1]], c = mesh.spots[largest[2]];
      for (const Vec p : mesh.spots) CHECK(inside_circle(a, b, c, p) <= 0.002);
    }
    CHECK(cells == Approx(signed_area(polygon(mesh.hull)).si()).epsilon(1e-9));
  }
}
