// SPDX-License-Identifier: MIT
#include "pour/zones.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "pour/joint_corners.h"
#include "pour/joint_ends.h"
#include "pour/slab_volume.h"
#include "slab/measure.h"
#include "support/pour_job.h"
#include "support/zones.h"

using namespace strikeoff;
using test::a_slab;
using test::mm;

namespace {

ZonePlan cut(const std::vector<SlabPlan>& shapes, int batches) {
  return test::cut_zones(test::slabs_of(shapes), shapes, batches);
}

Polygon ell() {
  return {{mm(0), mm(0)},     {mm(3200), mm(0)},   {mm(3200), mm(600)},
          {mm(600), mm(600)}, {mm(600), mm(2200)}, {mm(0), mm(2200)}};
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
  CHECK(covered == Approx(top).epsilon(1e-9));
}

/// Within 0.05 % of an equal share of an evenly thick slab.
void check_volumes(const std::vector<SlabPlan>& slabs, const ZonePlan& plan) {
  const double share = slabs[0].top_area.si() / static_cast<double>(plan.zones.size());
  for (const std::vector<Zone>& zones : plan.zones) {
    CHECK(zone_area(zones) == Approx(share).epsilon(0.0005));
  }
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
    for (const Zone& zone : zones) CHECK(overlap(zone.outline, sink).si() < 1e-12);
  }
  check_volumes(slabs, plan);
  check_tiling(slabs, plan);
}

TEST_CASE("a joint through an opening counts only the rails", "[zones]") {
  // 2000 x 600 with an opening in the middle: two batches meet on both rails of 100 mm.
  const Rectangle sink{{mm(800), mm(100)}, mm(400), mm(400)};
  const ZonePlan plan = cut({a_slab(mm(2000), mm(600), mm(50), {sink})}, 2);
  CHECK(plan.joint_length.in_mm() == Approx(200));
  CHECK(plan.neighbours[0] == std::vector<int>{2});
}

TEST_CASE("an L is poured from end to end and its fronts fan round the inner corner", "[zones]") {
  const std::vector<SlabPlan> slabs{a_slab(ell(), mm(50))};
  const ZonePlan plan = cut(slabs, 12);
  CHECK(plan.gap == 1);
  REQUIRE(plan.sweeps.size() == 1);
  CHECK(plan.sweeps[0].from == "edge 5");  // the short end of the upright leg, the left one
  CHECK(plan.sweeps[0].towards == "edge 2");
  // No front is much longer than the diagonal of the corner square, 0.6 x sqrt(2) = 0.85 m;
  // straight cuts along the long leg would have one of 2.2 m.
  CHECK(plan.wet_edge_max.in_mm() < 900);
  for (std::size_t i = 0; i + 1 < 12; ++i) {
    // Each of the eleven joints is about a leg wide.
    CHECK(plan.fronts[i].in_mm() >= 600 - 1e-6);
  }
  CHECK(plan.fronts[11] == Length{});
  // 2.88 m2 over 12 batches and 0.6 m: 0.4 m in the legs, less where the front is longer
  CHECK(plan.advances[0].in_mm() == Approx(400).epsilon(0.01));
  CHECK(plan.advances[5].in_mm() < 400);
  CHECK(plan.neighbours[0] == std::vector<int>{2});
  CHECK(plan.neighbours[5] == std::vector<int>{5, 7});
  check_volumes(slabs, plan);
  check_tiling(slabs, plan);
}

TEST_CASE("a U is poured from leg to leg however it lies", "[zones]") {
  Polygon u{{mm(0), mm(0)},      {mm(2800), mm(0)},  {mm(2800), mm(2200)}, {mm(2200), mm(2200)},
            {mm(2200), mm(600)}, {mm(600), mm(600)}, {mm(600), mm(2200)},  {mm(0), mm(2200)}};
  const std::vector<SlabPlan> along_x{a_slab(u, mm(50))};
  for (Point& p : u) std::swap(p.x, p.y);
  std::reverse(u.begin(), u.end());
  const std::vector<SlabPlan> along_y{a_slab(u, mm(50))};
  const ZonePlan a = cut(along_x, 14), b = cut(along_y, 14);
  for (const ZonePlan& plan : {a, b}) {
    CHECK(plan.gap == 1);
    CHECK(plan.wet_edge_max.in_mm() < 900);
  }
  check_tiling(along_x, a);
  check_tiling(along_y, b);
  check_volumes(along_x, a);
  CHECK(a.joint_length.in_mm() == Approx(b.joint_length.in_mm()).epsilon(0.01));
  CHECK(a.neighbours == b.neighbours);
}

TEST_CASE("a T is poured along its bar and, past the stem, at both fronts", "[zones]") {
  const Polygon t{{mm(1500), mm(0)},    {mm(2100), mm(0)},    {mm(2100), mm(1800)},
                  {mm(3600), mm(1800)}, {mm(3600), mm(2400)}, {mm(0), mm(2400)},
                  {mm(0), mm(1800)},    {mm(1500), mm(1800)}};
  const std::vector<SlabPlan> slabs{a_slab(t, mm(50))};
  const ZonePlan plan = cut(slabs, 12);
  CHECK(plan.gap <= 2);
  CHECK(plan.sweeps[0].fronts != Fronts::one);
  // At the junction a front may slant from 100 mm before the stem to 100 mm past it: 800 by 600 mm.
  for (const Joint& joint : plan.joints) CHECK(joint.length < mm(1000.01));
  check_volumes(slabs, plan);
  check_tiling(slabs, plan);
}

TEST_CASE("a ring is poured from the middle of an arm, both ways round", "[zones]") {
  // 2.0 x 1.2 m, sides of 0.3 m: 1.56 m2. Of 8 batches one covers 0.195 m2: 0.65 m of one arm, or
  // 0.325 m of two. Of 12 it is 0.43 m, or 0.22 m.
  const Rectangle inside{{mm(300), mm(300)}, mm(1400), mm(600)};
  const std::vector<SlabPlan> slabs{a_slab(mm(2000), mm(1200), mm(50), {inside})};
  const ZonePlan plan = cut(slabs, 8);
  CHECK(plan.gap == 1);
  CHECK(plan.zones[3].size() == 2);
  CHECK(plan.neighbours[3] == std::vector<int>{3, 5});
  check_volumes(slabs, plan);
  check_tiling(slabs, plan);
  const ZonePlan more = cut(slabs, 12);
  CHECK(more.gap == 1);
  CHECK(more.sweeps[0].fronts == Fronts::shared);
  CHECK(more.joint_length < mm(12 * 2 * 300 * 1.06));
  check_volumes(slabs, more);
  check_tiling(slabs, more);
}

TEST_CASE("zones beside a sink are split and meet on both rails", "[zones]") {
  // 2.4 x 0.6 m, sink 0.52 x 0.36 m from 0.94 m: 1.2528 m2, of eight batches 0.1566 m2 each, which
  // is 0.261 m of the full depth. The fourth runs from 0.783 m: to the sink 0.157 x 0.6 =
  // 0.0942 m2, the rest 0.0624 m2 on rails of 0.24 m together: 0.26 m more.
  const Rectangle sink{{mm(940), mm(120)}, mm(520), mm(360)};
  const std::vector<SlabPlan> slabs{a_slab(mm(2400), mm(600), mm(50), {sink})};
  const ZonePlan plan = cut(slabs, 8);
  CHECK(plan.gap == 1);
  std::vector<Joint> rails;
  for (const Joint& joint : plan.joints) {
    if (joint.first == 4) rails.push_back(joint);
  }
  REQUIRE(rails.size() == 2);
  CHECK(rails[0].second == 5);
  CHECK(rails[0].length.in_mm() + rails[1].length.in_mm() == Approx(240));
  CHECK(rails[0].line[0].x.in_mm() == Approx(1200));
  CHECK(plan.fronts[3].in_mm() == Approx(240));
  check_volumes(slabs, plan);
  check_tiling(slabs, plan);
}

TEST_CASE("thick slabs are filled in lifts and each waits for the next only", "[zones]") {
  // 250 mm: two lifts. 14 batches fill seven places of 2.4/7 m, each from the bottom up.
  const std::vector<SlabPlan> slabs{a_slab(mm(2400), mm(600), mm(250))};
  const ZonePlan plan = cut(slabs, 4);  // 0.6 m each two
  CHECK(plan.sweeps[0].lifts == 2);
  CHECK(plan.gap == 2);
  REQUIRE(plan.zones[1].size() == 1);
  CHECK(plan.zones[0][0].lift == 1);
  CHECK(plan.zones[1][0].lift == 2);
  CHECK(plan.zones[0][0].outline == plan.zones[1][0].outline);
  CHECK(plan.zones[0][0].outline == corners_of({{}, mm(1200), mm(600)}));
  CHECK(plan.neighbours == std::vector<std::vector<int>>{{2, 3}, {1, 4}, {1, 4}, {2, 3}});
  REQUIRE(plan.joints.size() == 4);
  CHECK(plan.joints[0].second == 2);
  CHECK(plan.joints[0].line.empty());
  CHECK(plan.joint_length.in_mm() == Approx(1200));  // 600 in each lift
  CHECK(cut({a_slab(mm(2400), mm(600), mm(150))}, 4).sweeps[0].lifts == 1);
}

TEST_CASE("what is left over after whole places in lifts is filled by one batch", "[zones]") {
  const ZonePlan plan = cut({a_slab(mm(2500), mm(600), mm(250))}, 5);
  // two places of two batches, 1.0 m, and one of 0.5 m in both lifts
  REQUIRE(plan.zones[4].size() == 2);
  CHECK(plan.zones[4][0].lift == 1);
  CHECK(plan.zones[4][1].lift == 2);
  CHECK(plan.zones[4][0].outline == corners_of({{mm(2000), mm(0)}, mm(500), mm(600)}));
  CHECK(plan.neighbours[4] == std::vector<int>{3, 4});
}

TEST_CASE("zones are equal in volume where the slab is not equally thick", "[zones]") {
  // A panel 12 mm thick that stops 30 mm short of the edge, and a base that falls away.
  Slab slab = test::slab_on(ell(), mm(25), mm(50));
  test::add_panel(slab, mm(-30), mm(12));
  slab.levels = {{{mm(0), mm(0)}, mm(0)}, {{mm(3200), mm(0)}, mm(9)}, {{mm(0), mm(2200)}, mm(4)}};
  for (Side& side : slab.sides) side.apron = side.number == 1;
  slab.apron_depth = mm(40);
  const Length strip = mm(18);
  const SlabPlan shape = measure_slab(slab, strip);
  const ZonePlan plan = test::cut_zones({slab}, {shape}, 11, strip);
  const SlabVolume volume(slab, shape, strip);
  double sum = 0;
  for (const auto& zones : plan.zones) {
    double here = 0;
    for (const Zone& zone : zones) here += volume.over(zone.outline).si();
    CHECK(here == Approx(shape.concrete.si() / 11).epsilon(0.0005));
    sum += here;
  }
  CHECK(sum == Approx(shape.concrete.si()).epsilon(1e-9));
  // The rim is thicker than the field, so the first zone, which has an end, is shorter on plan.
  const double first = zone_area(plan.zones[0]), third = zone_area(plan.zones[2]);
  CHECK(first < third);
}

TEST_CASE("joints near a corner are those that end within twice the thickness", "[zones]") {
  const Rectangle sink{{mm(600), mm(150)}, mm(500), mm(300)};
  const SlabPlan thin = a_slab(mm(2400), mm(600), mm(40), {sink});
  const SlabPlan thick = a_slab(mm(2400), mm(600), mm(70), {sink});
  CHECK(corner_clearance(thin).in_mm() == Approx(100));
  CHECK(corner_clearance(thick).in_mm() == Approx(140));
  const std::vector<Point> corners = crack_corners(thin);
  CHECK(corners.size() == 4);
  CHECK(near_corner({{mm(650), mm(0)}, {mm(650), mm(150)}}, corners, mm(100))->in_mm() ==
        Approx(50));
  CHECK_FALSE(near_corner({{mm(700), mm(0)}, {mm(700), mm(150)}}, corners, mm(100)));
  CHECK(crack_corners(a_slab(ell(), mm(50))) == std::vector<Point>{{mm(600), mm(600)}});
  CHECK(crack_corners(a_slab(mm(2400), mm(600), mm(50))).empty());
}

TEST_CASE("a rounded corner of an opening counts while its radius is small", "[zones]") {
  SlabPlan slab = a_slab(mm(2400), mm(600), mm(50));
  const Rectangle sink{{mm(600), mm(100)}, mm(500), mm(400)};
  slab.openings = {{outline_of(sink, mm(40)), sink}};
  const std::vector<Point> corners = crack_corners(slab);
  REQUIRE(corners.size() == 4);
  // the middle of the arc: 40 (1 - 1/sqrt 2) = 11.7 mm in from both sides
  const auto lower_left =
      near_corner({{mm(611.7157), mm(111.7157)}, {mm(0), mm(0)}}, corners, mm(1));
  REQUIRE(lower_left);
  CHECK(lower_left->in_mm() < 0.01);
  slab.openings = {{outline_of(sink, mm(120)), sink}};
  CHECK(crack_corners(slab).empty());
}

TEST_CASE("straight joints of an L are swung off its inner corner where they can be", "[zones]") {
  const std::vector<SlabPlan> slabs{a_slab(ell(), mm(50))};
  int clear = 0;
  for (int batches = 8; batches <= 18; ++batches) {
    CAPTURE(batches);
    const ZonePlan plan = cut(slabs, batches);
    const auto near = std::count_if(plan.joints.begin(), plan.joints.end(), [](const Joint& joint) {
      return near_corner(joint.line, {{mm(600), mm(600)}}, mm(100)).has_value();
    });
    CHECK(near <= 1);
    if (near == 0) ++clear;
    check_volumes(slabs, plan);
  }
  CHECK(clear >= 8);
}

TEST_CASE("an outline that is out of square is cut into equal areas too", "[zones]") {
  const std::vector<SlabPlan> slabs{a_slab(
      Polygon{{mm(0), mm(0)}, {mm(2000), mm(0)}, {mm(1800), mm(700)}, {mm(-50), mm(500)}}, mm(50))};
  const ZonePlan plan = cut(slabs, 7);
  CHECK(plan.gap == 1);
  check_volumes(slabs, plan);
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

TEST_CASE("a joint inside the slab is measured in from a side that faces it", "[zones]") {
  // 1200 x 1000 mm in 24 batches: three cells a row, whose lines end inside the slab.
  const std::vector<SlabPlan> slabs{a_slab(mm(1200), mm(1000), mm(50))};
  ZonePlan plan = cut(slabs, 24);
  name_ends(test::slabs_of(slabs), slabs, plan.joints);
  const Joint& first = plan.joints.front();  // of cells 1 and 2, in from the left in the first row
  REQUIRE(first.ends.size() == 2);
  int inside = 0;
  for (const Joint& joint : plan.joints) {
    for (std::size_t e = 0; e < 2; ++e) {
      if (joint.ends[e].inward > Length{}) ++inside;
      CHECK(joint.ends[e].away >= Length{});
      CHECK(joint.ends[e].inward <= mm(500));
    }
  }
  CHECK(inside > 20);
}
