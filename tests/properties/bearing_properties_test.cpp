// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "loads/bearing.h"
#include "slab/measure.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Point draw_place(Draw& draw, const Polygon& base) {
  const Rectangle box = bounding_box(base);
  return {box.at.x + box.length * (draw.whole(0, 100) / 100.0),
          box.at.y + box.depth * (draw.whole(0, 100) / 100.0)};
}

/// An odd base with overhang, panel, hollow, apron, legs and partitions, now and then.
Slab random_slab(Draw& draw) {
  Slab slab = slab_on(random_outline(draw, mm(300)), mm(60), mm(50));
  if (draw.one_in(2)) add_panel(slab, mm(20), mm(12));
  if (draw.one_in(2)) {
    slab.levels = {{{mm(0), mm(0)}, mm(draw.whole(0, 10))},
                   {{mm(700), mm(100)}, mm(draw.whole(0, 10))},
                   {{mm(100), mm(900)}, mm(draw.whole(0, 10))}};
  }
  if (draw.one_in(3)) {
    slab.apron_depth = mm(80);
    for (Side& side : slab.sides) side.apron = true;
  }
  if (draw.one_in(2)) {
    const Rectangle box = bounding_box(slab.base);
    slab.openings = {{"hole", {{box.length / 2, box.depth / 2}, mm(40), mm(40)}, true, mm(20)}};
  }
  const int legs = draw.whole(0, 6), partitions = draw.whole(legs == 0 ? 1 : 0, 4);
  for (int i = 0; i < legs; ++i) slab.legs.push_back(draw_place(draw, slab.base));
  for (int i = 0; i < partitions; ++i) {
    const Partition line{draw_place(draw, slab.base), draw_place(draw, slab.base)};
    if (line.from != line.to) slab.partitions.push_back(line);
  }
  if (slab.legs.empty() && slab.partitions.empty()) slab.legs.push_back({});
  return slab;
}

SlabPlan planned(const Slab& slab) {
  SlabPlan plan = measure_slab(slab, mm(16));
  plan.mass = plan.concrete * kilograms_per_m3(2250);
  return plan;
}

bool legs_stand_apart(const Slab& slab) {
  for (std::size_t i = 0; i < slab.legs.size(); ++i) {
    for (std::size_t k = 0; k < i; ++k) {
      if (slab.legs[i] == slab.legs[k]) return false;
    }
  }
  return true;
}

Slab scaled(Slab slab, double factor) {
  const auto scale = [&](Point& p) { p = {p.x * factor, p.y * factor}; };
  for (Point& corner : slab.base) scale(corner);
  for (Point& leg : slab.legs) scale(leg);
  for (Side& side : slab.sides) side.overhang = side.overhang * factor;
  slab.thickness = slab.thickness * factor;
  return slab;
}

}  // namespace

TEST_CASE("what the supports carry adds up to the slab", "[properties][loads]") {
  Draw draw(31);
  for (int run = 0; run < 150; ++run) {
    const Slab slab = random_slab(draw);
    if (!legs_stand_apart(slab)) continue;
    const SlabPlan plan = planned(slab);
    Mass mass;
    Area area;
    for (const Bearing& one : bearings(slab, plan, mm(16))) {
      CHECK(one.mass >= kilograms(-1e-9));
      mass += one.mass;
      area += one.area;
    }
    INFO("run " << run);
    CHECK(mass.si() == Approx(plan.mass.si()).epsilon(1e-9));
    CHECK(area.si() == Approx(plan.top_area.si()).epsilon(1e-9));
  }
}

TEST_CASE("a slab twice as large in all ways weighs eightfold on each leg", "[properties][loads]") {
  Draw draw(32);
  for (int run = 0; run < 60; ++run) {
    Slab slab = slab_on(random_outline(draw, mm(300)), mm(60), mm(50));
    for (int i = 0; i < 5; ++i) slab.legs.push_back(draw_place(draw, slab.base));
    if (!legs_stand_apart(slab)) continue;
    const Slab large = scaled(slab, 2);
    const auto small_loads = bearings(slab, planned(slab), mm(16));
    const auto large_loads = bearings(large, planned(large), mm(16));
    for (std::size_t k = 0; k < small_loads.size(); ++k) {
      CHECK(large_loads[k].mass.si() == Approx(small_loads[k].mass.si() * 8).margin(1e-6));
    }
  }
}

TEST_CASE("supports that mirror each other carry the same", "[properties][loads]") {
  Draw draw(33);
  for (int run = 0; run < 60; ++run) {
    const Length length = mm(draw.whole(800, 3000)), depth = mm(draw.whole(300, 900));
    Slab slab = slab_on(corners_of({{}, length, depth}), mm(draw.whole(0, 100)), mm(50));
    const Length in_x = mm(draw.whole(1, 300)), y = mm(draw.whole(0, 300));
    const Length part = mm(draw.whole(310, 390));
    slab.legs = {{in_x, y}, {length - in_x, y}};
    slab.partitions = {{{part, {}}, {part, depth}}, {{length - part, {}}, {length - part, depth}}};
    const auto loads = bearings(slab, planned(slab), mm(16));
    REQUIRE(loads.size() == 4);
    CHECK(loads[0].mass.si() == Approx(loads[1].mass.si()).epsilon(1e-9));
    CHECK(loads[2].mass.si() == Approx(loads[3].mass.si()).epsilon(1e-9));
  }
}
