// SPDX-License-Identifier: MIT
#include "pour/zones.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "support/pour_job.h"

using namespace strikeoff;
using test::a_slab;
using test::mm;

namespace {


ZonePlan cut(const std::vector<SlabPlan>& shapes, int batches) {
  return cut_zones(test::slabs_of(shapes), shapes, batches);
}

double zone_area(const std::vector<Zone>& zones) {
  double sum = 0;
  for (const Zone& zone : zones) sum += signed_area(zone.outline).si();
  return sum;
}

/// Every outline is simple and anticlockwise, and the zones cover the top once.
void check_tiling(const std::vector<SlabPlan>& slabs, const ZonePlan& plan) {
  double top = 0, covered = 0;
  for (const SlabPlan& slab : slabs) top += slab.top_area.si();
  for (const std::vector<Zone>& zones : plan.zones) {
    for (const Zone& zone : zones) {
      REQUIRE(zone.outline.size() >= 3);
      CHECK_FALSE(self_contact(zone.outline));
      CHECK(signed_area(zone.outline).si() > 0);
    }
    covered += zone_area(zones);
  }
  CHECK(covered == Approx(top).epsilon(1e-12));
}

void check_no_overlap(const ZonePlan& plan) {
  std::vector<Rectangle> all;
  for (const std::vector<Zone>& zones : plan.zones) {
    for (const Zone& zone : zones) all.push_back(bounding_box(zone.outline));
  }
  for (std::size_t i = 0; i < all.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      const Length x = std::min(all[i].at.x + all[i].length, all[k].at.x + all[k].length) -
                       std::max(all[i].at.x, all[k].at.x);
      const Length y = std::min(all[i].at.y + all[i].depth, all[k].at.y + all[k].depth) -
                       std::max(all[i].at.y, all[k].at.y);
      CHECK(std::min(x, y).in_mm() < 1e-3);
    }
  }
}

}  // namespace

TEST_CASE("six batches swept along a bench leave five short joints", "[zones]") {
  // 1.8 x 0.60 x 0.05 m, six batches of 9 L: advance 0.30 m, joints 5 x 0.60 = 3.0 m.
  const std::vector<SlabPlan> slabs{a_slab(mm(1800), mm(600), mm(50))};
  const ZonePlan plan = cut(slabs, 6);
  CHECK(plan.gap == 1);
  CHECK(plan.joint_length.in_mm() == Approx(3000));
  CHECK(plan.wet_edge_max.in_mm() == Approx(600));
  CHECK(plan.neighbours == std::vector<std::vector<int>>{{2}, {1, 3}, {2, 4}, {3, 5}, {4, 6}, {5}});
  CHECK(plan.zones[1][0].outline == corners_of({{mm(300), mm(0)}, mm(300), mm(600)}));
  check_tiling(slabs, plan);
}

TEST_CASE("a deep slab is swept from the front to the back", "[zones]") {
  const std::vector<SlabPlan> slabs{a_slab(mm(600), mm(1800), mm(50))};
  const ZonePlan plan = cut(slabs, 3);
  CHECK(plan.zones[0][0].outline == corners_of({{mm(0), mm(0)}, mm(600), mm(600)}));
  CHECK(plan.joint_length.in_mm() == Approx(1200));
  check_tiling(slabs, plan);
}

TEST_CASE("one batch has no joint", "[zones]") {
  const ZonePlan plan = cut({a_slab(mm(900), mm(600), mm(50))}, 1);
  CHECK(plan.gap == 0);
  CHECK(plan.neighbours == std::vector<std::vector<int>>{{}});
  CHECK(plan.wet_edge_max == Length{});
  CHECK(plan.joint_length == Length{});
}

TEST_CASE("a wide slab is cut into rows of cells and the gap is the cells in a row", "[zones]") {
  // 1200 x 1000 mm, h 50 mm, 24 batches: advance 50 mm, least 150 mm, so 3 cells a row, 8 rows.
  const std::vector<SlabPlan> slabs{a_slab(mm(1200), mm(1000), mm(50))};
  const ZonePlan plan = cut(slabs, 24);
  CHECK(plan.gap == 3);
  CHECK(plan.neighbours[0] == std::vector<int>{2, 4});
  CHECK(plan.neighbours[4] == std::vector<int>{2, 4, 6, 8});
  // 7 lines of 1000 mm and 2 x 8 of 150 mm
  CHECK(plan.joint_length.in_mm() == Approx(7 * 1000 + 16 * 150));
  // a whole front and one step of 150 mm
  CHECK(plan.wet_edge_max.in_mm() == Approx(1150));
  check_tiling(slabs, plan);
  check_no_overlap(plan);
}

TEST_CASE("the last row may hold fewer cells", "[zones]") {
  const std::vector<SlabPlan> slabs{a_slab(mm(1200), mm(1000), mm(50))};
  const ZonePlan plan = cut(slabs, 25);  // advance 48 mm: 4 cells; 6 rows and one cell
  CHECK(plan.gap == 4);
  CHECK(plan.neighbours[24] == std::vector<int>{21, 22, 23, 24});
  for (const std::vector<Zone>& zones : plan.zones) {
    CHECK(zone_area(zones) == Approx(1.2 / 25).epsilon(1e-9));
  }
  check_tiling(slabs, plan);
}

TEST_CASE("an advance of exactly the least spans the front", "[zones]") {
  CHECK(cut({a_slab(mm(1500), mm(600), mm(50))}, 10).gap == 1);
  // thicker: least 2 x 80 = 160 mm
  CHECK(cut({a_slab(mm(1500), mm(600), mm(80))}, 10).gap == 2);
}

TEST_CASE("a batch may end one slab and begin the next", "[zones]") {
  // 1.0 and 0.5 m2 of one thickness in two batches: 0.75 m2 each.
  SlabPlan first = a_slab(mm(2000), mm(500), mm(50)), second = a_slab(mm(1000), mm(500), mm(50));
  first.name = "left";
  second.name = "right";
  const ZonePlan plan = cut({first, second}, 2);
  REQUIRE(plan.zones[0].size() == 1);
  REQUIRE(plan.zones[1].size() == 2);
  CHECK(plan.zones[1][0].slab == "left");
  CHECK(plan.zones[1][0].outline == corners_of({{mm(1500), mm(0)}, mm(500), mm(500)}));
  CHECK(plan.zones[1][1].slab == "right");
  CHECK(plan.joint_length.in_mm() == Approx(500));
  check_tiling({first, second}, plan);
}

TEST_CASE("slabs that each take whole batches do not touch", "[zones]") {
  const std::vector<SlabPlan> slabs(3, a_slab(mm(1000), mm(500), mm(50)));
  const ZonePlan plan = cut(slabs, 3);
  CHECK(plan.gap == 0);
  for (const auto& zones : plan.zones) CHECK(zones.size() == 1);
}

TEST_CASE("slabs of different thickness share the batches by volume", "[zones]") {
  // 25 L and 50 L in three batches of 25 L
  const std::vector<SlabPlan> slabs{a_slab(mm(1000), mm(500), mm(50)),
                                    a_slab(mm(1000), mm(500), mm(100))};
  const ZonePlan plan = cut(slabs, 3);
  CHECK(plan.neighbours == std::vector<std::vector<int>>{{}, {3}, {2}});
  CHECK(zone_area(plan.zones[1]) == Approx(0.25));
}

TEST_CASE("a sink splits the zones around it and none covers it", "[zones]") {
  const Rectangle sink{{mm(900), mm(120)}, mm(520), mm(360)};
  const std::vector<SlabPlan> slabs{a_slab(mm(2400), mm(600), mm(50), {sink})};
  const int batches = GENERATE(2, 5, 8, 12, 40);
  const ZonePlan plan = cut(slabs, batches);
  CAPTURE(batches);
  for (const auto& zones : plan.zones) {
    CHECK(zone_area(zones) == Approx(slabs[0].top_area.si() / batches).epsilon(1e-9));
    for (const Zone& zone : zones) CHECK(overlap(zone.outline, sink).si() < 1e-12);
  }
  check_tiling(slabs, plan);
  check_no_overlap(plan);
}

TEST_CASE("a joint through an opening counts only the rails", "[zones]") {
  // 2000 x 600 with an opening in the middle: two batches meet on both rails of 100 mm.
  const Rectangle sink{{mm(800), mm(100)}, mm(400), mm(400)};
  const ZonePlan plan = cut({a_slab(mm(2000), mm(600), mm(50), {sink})}, 2);
  CHECK(plan.joint_length.in_mm() == Approx(200));
  CHECK(plan.neighbours[0] == std::vector<int>{2});
}

TEST_CASE("an L is cut straight across its long direction and its gap is assumed", "[zones]") {
  const Polygon ell{{mm(0), mm(0)},     {mm(3200), mm(0)},   {mm(3200), mm(600)},
                    {mm(600), mm(600)}, {mm(600), mm(2200)}, {mm(0), mm(2200)}};
  const std::vector<SlabPlan> slabs{a_slab(ell, mm(50))};
  const ZonePlan plan = cut(slabs, 12);
  CHECK(plan.gap == 1);
  for (const auto& zones : plan.zones) {
    CHECK(zone_area(zones) == Approx(slabs[0].area.si() / 12).epsilon(1e-9));
  }
  check_tiling(slabs, plan);
  check_no_overlap(plan);
}

TEST_CASE("a U and its mirror on the other axis are tiled alike", "[zones]") {
  Polygon u{{mm(0), mm(0)},      {mm(2800), mm(0)},  {mm(2800), mm(2200)}, {mm(2200), mm(2200)},
            {mm(2200), mm(600)}, {mm(600), mm(600)}, {mm(600), mm(2200)},  {mm(0), mm(2200)}};
  const std::vector<SlabPlan> along_x{a_slab(u, mm(50))};
  for (Point& p : u) std::swap(p.x, p.y);
  std::reverse(u.begin(), u.end());
  const std::vector<SlabPlan> along_y{a_slab(u, mm(50))};
  const ZonePlan a = cut(along_x, 14), b = cut(along_y, 14);
  check_tiling(along_x, a);
  check_tiling(along_y, b);
  CHECK(a.joint_length.in_mm() == Approx(b.joint_length.in_mm()));
  CHECK(a.neighbours == b.neighbours);
}

TEST_CASE("an outline that is out of square is cut into equal areas too", "[zones]") {
  const std::vector<SlabPlan> slabs{a_slab(
      Polygon{{mm(0), mm(0)}, {mm(2000), mm(0)}, {mm(1800), mm(700)}, {mm(-50), mm(500)}}, mm(50))};
  const ZonePlan plan = cut(slabs, 7);
  for (const auto& zones : plan.zones) {
    CHECK(zone_area(zones) == Approx(slabs[0].area.si() / 7).epsilon(1e-9));
  }
  check_tiling(slabs, plan);
}

TEST_CASE("mirroring a symmetric slab keeps its joints", "[zones]") {
  const Rectangle left{{mm(200), mm(150)}, mm(300), mm(300)};
  const Rectangle right{{mm(1900), mm(150)}, mm(300), mm(300)};
  const ZonePlan a = cut({a_slab(mm(2400), mm(600), mm(50), {left})}, 9);
  const ZonePlan b = cut({a_slab(mm(2400), mm(600), mm(50), {right})}, 9);
  CHECK(a.joint_length.in_mm() == Approx(b.joint_length.in_mm()));
  CHECK(a.gap == b.gap);
}

TEST_CASE("thousands of batches and slabs are cut in a blink", "[zones]") {
  // Neighbours are sought between consecutive rows only; comparing all pairs of ten thousand
  // zones would be 5e7 comparisons and show.
  const std::vector<SlabPlan> slabs{a_slab(mm(60000), mm(40000), mm(100))};
  const ZonePlan plan = cut(slabs, 10000);
  check_tiling(slabs, plan);
  // advance 6 mm against 200 mm: 34 cells a row
  CHECK(plan.gap == 34);

  const std::vector<SlabPlan> many(1000, a_slab(mm(1000), mm(500), mm(50)));
  const ZonePlan spread = cut(many, 2000);
  CHECK(spread.gap == 1);
  CHECK(spread.joint_length.in_mm() == Approx(500 * 1000));
}
