// SPDX-License-Identifier: MIT
#include <algorithm>
#include <array>
#include <catch2/catch.hpp>
#include <cmath>
#include <functional>

#include "core/outlines.h"
#include "slab/heights.h"
#include "slab/measure.h"
#include "slab/triangulation.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Point at(double x_mm, double y_mm) {
  return {mm(x_mm), mm(y_mm)};
}

/// Readings on whole millimetres inside 2.4 x 1.2 m, no two within 40 mm: three to twenty, or on a
/// grid, whose squares have more than one triangulation.
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
      return edge_length({other.at, place}, 0) < mm(40);
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

Point along(const Point& a, const Point& b, double t) {
  return {a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
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
        numerical([&](double x, double y) { return heights.low(at(x, y)).in_mm(); }, outline);
    const double rise =
        numerical([&](double x, double y) { return heights.rise(at(x, y)).in_mm(); }, outline);
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
      CHECK(heights.low(reading.at).in_mm() == Approx(expected).margin(0.5));
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
      const Point p = along(a, b, k / 1000.0);
      const Point q{p.x + Length::nm(700), p.y + Length::nm(700)};
      REQUIRE(std::abs((heights.low(p) - heights.low(q)).in_mm()) < 0.1);
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
    const Length most = heights.most_low(a, b);
    Length sampled = heights.low(a);
    for (int k = 1; k <= 2000; ++k)
      sampled = std::max(sampled, heights.low(along(a, b, k / 2000.0)));
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
        const double thick = (over + heights.low(p) + heights.rise(p)).in_mm();
        least = std::min(least, thick);
        most = std::max(most, thick);
      }
    }
    CHECK(shape.thinnest.thickness.in_mm() <= least + 1e-6);
    CHECK(shape.thickest.thickness.in_mm() >= most - 1e-6);
    const auto height_at = [&](const ThicknessAt& place) {
      return (heights.low(place.at) + heights.rise(place.at)).in_mm();
    };
    CHECK(shape.thinnest.thickness.in_mm() == Approx(38 + height_at(shape.thinnest)).margin(1e-6));
    CHECK(shape.thickest.thickness.in_mm() == Approx(50 + height_at(shape.thickest)).margin(1e-6));
  }
}

TEST_CASE("readings on one circle give the mean of all their triangulations", "[properties]") {
  // Every triangulation by brute force: the triangle on the side from the last corner to the first,
  // then those of the polygons beside it.
  Draw draw(4208);
  for (int run = 0; run < 20; ++run) {
    const int n = draw.whole(5, 7);
    std::vector<LevelReading> levels;
    std::vector<double> angles;
    for (int k = 0; k < n; ++k) angles.push_back((k + draw.whole(0, 60) / 100.0) * 6.283185 / n);
    for (const double angle : angles) {
      levels.push_back({at(700 * std::cos(angle), 700 * std::sin(angle)), mm(draw.whole(0, 20))});
    }
    Slab slab = slab_on(corners_of({at(-700, -700), mm(1400), mm(1400)}), {}, mm(50));
    slab.levels = levels;
    const Heights heights(slab);
    const double highest = least(levels).low.in_mm();
    const Point p = at(draw.whole(-300, 300), draw.whole(-300, 300));
    const auto corner = [&](std::size_t k) { return levels[k].at; };
    const auto doubled = [](const Point& a, const Point& b, const Point& c) {
      return (b.x - a.x).in_m() * (c.y - a.y).in_m() - (b.y - a.y).in_m() * (c.x - a.x).in_m();
    };
    struct Tally {
      double count = 0, sum = 0;  // triangulations, and the heights at p of those that hold p
    };
    // Of the polygon of corners i to j.
    const std::function<Tally(std::size_t, std::size_t)> tally = [&](std::size_t i,
                                                                     std::size_t j) -> Tally {
      if (j == i + 1) return {1, 0};
      Tally all;
      for (std::size_t k = i + 1; k < j; ++k) {
        const Tally before = tally(i, k), after = tally(k, j);
        const Point a = corner(i), b = corner(k), c = corner(j);
        const double whole = doubled(a, b, c), u = doubled(p, b, c), v = doubled(a, p, c),
                     w = doubled(a, b, p);
        double here = 0;
        if (u > 0 && v > 0 && w > 0) {
          here =
              (u * levels[i].low.in_mm() + v * levels[k].low.in_mm() + w * levels[j].low.in_mm()) /
              whole;
        }
        all.count += before.count * after.count;
        all.sum +=
            before.count * after.count * here + before.sum * after.count + before.count * after.sum;
      }
      return all;
    };
    const Tally all = tally(0, static_cast<std::size_t>(n) - 1);
    CHECK(heights.low(p).in_mm() == Approx(all.sum / all.count - highest).margin(1e-6));
  }
}

TEST_CASE("no reading lies inside the circle of a cell and the cells fill the hull",
          "[properties]") {
  Draw draw(4209);
  for (int run = 0; run < 200; ++run) {
    std::vector<Spot> spots;
    for (const LevelReading& reading : random_levels(draw)) {
      spots.push_back({reading.at.x.in_m(), reading.at.y.in_m()});
    }
    const Mesh mesh = delaunay(spots);
    const auto polygon = [&](const std::vector<std::size_t>& corners) {
      Polygon result;
      for (const std::size_t k : corners) {
        result.push_back({Length::m(mesh.spots[k].x), Length::m(mesh.spots[k].y)});
      }
      return result;
    };
    double cells = 0;
    for (const auto& cell : mesh.cells) {
      const Polygon corners = polygon(cell);
      cells += signed_area(corners).si();
      for (std::size_t k = 0; k < cell.size(); ++k) CHECK(is_convex_corner(corners, k));
      // The circle of a cell is best known from the largest triangle of its corners.
      std::array<std::size_t, 3> largest{cell[0], cell[1], cell[2]};
      const auto size = [&](const std::array<std::size_t, 3>& t) {
        return signed_area(polygon({t.begin(), t.end()})).si();
      };
      for (std::size_t i = 0; i < cell.size(); ++i) {
        for (std::size_t j = i + 1; j < cell.size(); ++j) {
          for (std::size_t k = j + 1; k < cell.size(); ++k) {
            if (size({cell[i], cell[j], cell[k]}) > size(largest)) {
              largest = {cell[i], cell[j], cell[k]};
            }
          }
        }
      }
      const Spot &a = mesh.spots[largest[0]], &b = mesh.spots[largest[1]],
                 &c = mesh.spots[largest[2]];
      for (const Spot& p : mesh.spots) {
        // The in-circle determinant (positive inside) over twice the triangle's area is
        // r2 - d2 (from memory: Guibas and Stolfi, 1985).
        const double ax = a.x - p.x, ay = a.y - p.y, bx = b.x - p.x, by = b.y - p.y;
        const double cx = c.x - p.x, cy = c.y - p.y;
        const double determinant = (ax * ax + ay * ay) * (bx * cy - cx * by) -
                                   (bx * bx + by * by) * (ax * cy - cx * ay) +
                                   (cx * cx + cy * cy) * (ax * by - bx * ay);
        const double twice = (b.x - a.x) * (c.y - a.y) - (b.y - a.y) * (c.x - a.x);
        const double radius = std::hypot(b.x - a.x, b.y - a.y) * std::hypot(c.x - b.x, c.y - b.y) *
                              std::hypot(a.x - c.x, a.y - c.y) / (2 * twice);
        CHECK(determinant / twice <= 2 * radius * 0.002);
      }
    }
    std::vector<std::size_t> hull;
    for (const auto& side : mesh.sides) hull.push_back(side.front());
    CHECK(cells == Approx(signed_area(polygon(hull)).si()).epsilon(1e-9));
  }
}
