// SPDX-License-Identifier: MIT
// Laws of the zones over random slabs, with GEOS as the oracle of their geometry.
#include <catch2/catch.hpp>
#include <cmath>
#include <vector>

#include "core/outlines.h"
#include "pour/slab_volume.h"
#include "pour/zones.h"
#include "slab/measure.h"
#include "support/geos.h"
#include "support/random_outlines.h"
#include "support/zones.h"

using namespace strikeoff;
using test::Draw;
using test::mm;

namespace {

/// Two openings at most, where they leave 60 mm of concrete all round.
void add_openings(Draw& draw, Slab& slab) {
  const Outline edge = slab_edge(slab);
  const Polygon outline = chords(edge, drawn_within);
  const Rectangle box = bounding_box(outline);
  for (int i = 0; i < 6 && slab.openings.size() < 2; ++i) {
    const Length length = mm(draw.whole(80, 700)), depth = mm(draw.whole(80, 500));
    const Point at{mm(draw.whole(0, static_cast<int>(box.length.in_mm()))),
                   mm(draw.whole(0, static_cast<int>(box.depth.in_mm())))};
    const Length rim = mm(60);
    const auto with_rim = [&](const Rectangle& r, const Point& from) {
      return Rectangle{
          {from.x + r.at.x - rim, from.y + r.at.y - rim}, r.length + 2 * rim, r.depth + 2 * rim};
    };
    const Rectangle opening{at, length, depth};
    bool fits = contains(outline, with_rim(opening, box.at));
    for (const Opening& other : slab.openings) {
      fits = fits && !overlaps(with_rim(opening, {}), other.at);
    }
    if (!fits) continue;
    const Length radius =
        draw.one_in(2) ? Length{} : std::min(length, depth) * (draw.whole(1, 5) / 10.0);
    slab.openings.push_back({"opening", opening, draw.one_in(2), radius});
  }
}

Slab random_slab(Draw& draw) {
  Slab slab = test::slab_on(test::random_outline(draw), mm(20), mm(draw.whole(30, 120)));
  if (draw.one_in(3)) test::add_panel(slab, mm(draw.whole(-10, 20)), mm(12));
  add_openings(draw, slab);
  if (draw.one_in(3)) slab.fall = Fall{0.01, 0};
  return slab;
}

std::vector<Polygon> outlines(const ZonePlan& plan) {
  std::vector<Polygon> all;
  for (const auto& zones : plan.zones) {
    for (const Zone& zone : zones) {
      if (zone.lift == 1) all.push_back(zone.outline);
    }
  }
  return all;
}

}  // namespace

TEST_CASE("zones are simple and tile the slab without overlap", "[zones][properties]") {
  Draw draw(20261125);
  for (int round = 0; round < 24; ++round) {
    CAPTURE(round);
    const Slab slab = random_slab(draw);
    const SlabPlan shape = measure_slab(slab);
    const ZonePlan plan = test::cut_zones({slab}, {shape}, draw.whole(1, 40));
    std::vector<Polygon> holes;
    for (const OpeningPlan& opening : shape.openings) {
      holes.push_back(chords(opening.edge, drawn_within));
    }
    const GeosRegion region(shape.outline, holes);
    const std::vector<Polygon> zones = outlines(plan);
    double sum = 0;
    for (const Polygon& zone : zones) {
      CHECK(GeosRegion(zone).is_valid());
      CHECK(signed_area(zone).si() > 0);
      sum += signed_area(zone).si();
    }
    const double all = region.area().si();
    CHECK(sum == Approx(all).epsilon(1e-6));
    CHECK(GeosRegion::union_of(zones).common(region).area().si() == Approx(all).epsilon(1e-6));
    CHECK(GeosRegion::union_of(zones).area().si() == Approx(all).epsilon(1e-6));
  }
}

TEST_CASE("zones of a slab of any thickness are equal in volume and add up",
          "[zones][properties]") {
  Draw draw(42);
  for (int round = 0; round < 24; ++round) {
    CAPTURE(round);
    const Slab slab = random_slab(draw);
    const SlabPlan shape = measure_slab(slab);
    const int batches = draw.whole(1, 30);
    const ZonePlan plan = test::cut_zones({slab}, {shape}, batches);
    const SlabVolume volume(slab, shape, {});
    double sum = 0;
    for (const auto& zones : plan.zones) {
      double here = 0;
      for (const Zone& zone : zones) {
        if (zone.lift == 1) here += volume.over(zone.outline).si();
      }
      CHECK(here == Approx(shape.concrete.si() / batches).epsilon(0.005));
      sum += here;
    }
    // Arcs are drawn by chords within 0.05 mm.
    CHECK(sum == Approx(shape.concrete.si()).epsilon(1e-3));
  }
}

TEST_CASE("batches meet where their zones do", "[zones][properties]") {
  Draw draw(7);
  for (int round = 0; round < 10; ++round) {
    CAPTURE(round);
    const Slab slab = random_slab(draw);
    const SlabPlan shape = measure_slab(slab);
    const ZonePlan plan = test::cut_zones({slab}, {shape}, draw.whole(2, 14));
    // What two regions share of their edges is half of what joining them saves.
    double between = 0, all = perimeter(shape.outline).in_mm();
    for (const OpeningPlan& opening : shape.openings) {
      all += perimeter(chords(opening.edge, drawn_within)).in_mm();
    }
    for (const auto& zones : plan.zones) {
      std::vector<Polygon> parts;
      for (const Zone& zone : zones) parts.push_back(zone.outline);
      between += GeosRegion::union_of(parts).perimeter().in_mm();
    }
    CHECK((between - all) / 2 == Approx(plan.joint_length.in_mm()).epsilon(1e-3).margin(1));
  }
}

TEST_CASE("mirroring a slab all but keeps its gap and its joints", "[zones][properties]") {
  Draw draw(99);
  for (int round = 0; round < 10; ++round) {
    CAPTURE(round);
    const Polygon outline = test::random_rectilinear(draw);
    Polygon mirrored;
    for (auto p = outline.rbegin(); p != outline.rend(); ++p) mirrored.push_back({-p->x, p->y});
    const int batches = draw.whole(2, 20);
    const auto cut = [&](const Polygon& base) {
      const Slab slab = test::slab_on(base, {}, mm(50));
      return test::cut_zones({slab}, {measure_slab(slab)}, batches);
    };
    const ZonePlan a = cut(outline), b = cut(mirrored);
    // The mesh is no mirror image: an advance next to the least may come out on either side.
    CHECK(std::abs(a.gap - b.gap) <= 1);
    // Of courses with joints up to a tenth longer the one that keeps off corners is taken.
    CHECK(a.joint_length.in_mm() == Approx(b.joint_length.in_mm()).epsilon(0.11));
  }
}

TEST_CASE("the slab in the middle of many is cut as it is alone", "[zones][properties]") {
  Draw draw(3);
  for (int round = 0; round < 10; ++round) {
    const Slab slab = test::slab_on(test::random_rectilinear(draw), {}, mm(50));
    const SlabPlan shape = measure_slab(slab);
    const ZonePlan alone = test::cut_zones({slab}, {shape}, 5);
    const ZonePlan three = test::cut_zones({slab, slab, slab}, {shape, shape, shape}, 15);
    for (std::size_t i = 0; i < 5; ++i) {
      REQUIRE(three.zones[5 + i].size() == alone.zones[i].size());
      CHECK(std::abs(three.fronts[5 + i].in_mm() - alone.fronts[i].in_mm()) < 0.5);
    }
    CHECK(three.gap == alone.gap);
  }
}
