// SPDX-License-Identifier: MIT
#include "slab/line_cut.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <utility>
#include <vector>

#include "support/geos.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

bool same(const LineSpans& a, const std::vector<std::pair<double, double>>& mm_b) {
  if (a.size() != mm_b.size()) return false;
  for (std::size_t i = 0; i < a.size(); ++i) {
    if (a[i].from != mm(mm_b[i].first) || a[i].to != mm(mm_b[i].second)) return false;
  }
  return true;
}

LineSpans spans(const std::vector<std::pair<double, double>>& all) {
  LineSpans result;
  for (const auto& [from, to] : all) result.push_back({mm(from), mm(to)});
  return result;
}

/// Teeth up from a back of 20 mm: `teeth` of them, 50 mm wide and 80 mm high, 50 mm apart.
Polygon comb(int teeth) {
  Polygon polygon{{mm(0), mm(0)}, {mm(100 * teeth - 50), mm(0)}};
  for (int i = teeth; i-- > 0;) {
    const Length left = mm(100 * i), right = left + mm(50);
    polygon.push_back({right, mm(100)});
    polygon.push_back({left, mm(100)});
    if (i > 0) {
      polygon.push_back({left, mm(20)});
      polygon.push_back({left - mm(50), mm(20)});
    }
  }
  return polygon;
}

}  // namespace

TEST_CASE("spans that touch or overlap become one", "[line_cut]") {
  CHECK(same(joined(spans({{5, 9}, {0, 2}, {2, 4}, {6, 7}, {3, 3}})), {{0, 4}, {5, 9}}));
  CHECK(total(spans({{0, 4}, {5, 9}})) == mm(8));
  CHECK(total({}) == Length{});
}

TEST_CASE("spans are intersected and taken away piece by piece", "[line_cut]") {
  const LineSpans a = spans({{0, 10}, {20, 30}}), b = spans({{5, 22}, {25, 26}, {40, 50}});
  CHECK(same(common(a, b), {{5, 10}, {20, 22}, {25, 26}}));
  CHECK(same(less(a, b), {{0, 5}, {22, 25}, {26, 30}}));
  CHECK(same(less(a, {}), {{0, 10}, {20, 30}}));
  CHECK(less(a, spans({{-1, 31}})).empty());
}

TEST_CASE("a line across a comb is inside each tooth", "[line_cut]") {
  CHECK(same(inside(comb(3), mm(50)), {{0, 50}, {100, 150}, {200, 250}}));
  CHECK(same(inside(comb(3), mm(10)), {{0, 250}}));
  CHECK(same(inside(turned(comb(3)), mm(25)), {{0, 100}}));
  CHECK(same(inside(turned(comb(3)), mm(75)), {{0, 20}}));
  CHECK(inside(comb(3), mm(101)).empty());
}

TEST_CASE("a comb cut across its teeth falls into its teeth", "[line_cut]") {
  const std::vector<Polygon> tips = parts_inside(comb(3), {{mm(-10), mm(60)}, mm(500), mm(100)});
  REQUIRE(tips.size() == 3);
  for (const Polygon& tip : tips) {
    CHECK(tip.size() == 4);
    CHECK(signed_area(tip).si() == Approx(50e-3 * 40e-3));
  }
  // The back stays one piece with three stumps: 250 x 20 + 3 x 50 x 40 mm.
  const std::vector<Polygon> back = parts_inside(comb(3), {{mm(-10), mm(-10)}, mm(500), mm(70)});
  REQUIRE(back.size() == 1);
  CHECK(signed_area(back.front()).si() == Approx(250e-3 * 20e-3 + 3 * 50e-3 * 40e-3));
}

TEST_CASE("a polygon inside a rectangle stays as it is and one outside is gone", "[line_cut]") {
  CHECK(parts_inside(comb(2), {{mm(0), mm(0)}, mm(150), mm(100)}) == std::vector<Polygon>{comb(2)});
  CHECK(parts_inside(comb(2), {{mm(150), mm(0)}, mm(50), mm(100)}).empty());
}

TEST_CASE("parts of any star inside a rectangle are those of GEOS", "[line_cut]") {
  Draw draw(21);
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    const int corners = draw.whole(3, 14);
    Polygon star;
    for (int k = 0; k < corners; ++k) {
      const double turn = 2 * 3.141592653589793 * k / corners, far = draw.whole(50, 1000);
      star.push_back({mm(far * std::cos(turn)), mm(far * std::sin(turn))});
    }
    const Rectangle r{{mm(draw.whole(-900, 500)), mm(draw.whole(-900, 500))},
                      mm(draw.whole(50, 900)),
                      mm(draw.whole(50, 900))};
    const GeosRegion expected = GeosRegion(star).common(GeosRegion(corners_of(r)));
    Area sum;
    for (const Polygon& part : parts_inside(star, r)) {
      CHECK(GeosRegion(part).is_valid());
      CHECK(geos_common_area(part, star).si() == Approx(signed_area(part).si()).margin(1e-9));
      sum += signed_area(part);
    }
    CHECK(sum.si() == Approx(expected.area().si()).margin(1e-5));  // tips under 1 mm2 left out
  }
}
