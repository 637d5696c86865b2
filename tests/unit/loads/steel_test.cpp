// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "loads/steel.h"
#include "slab/measure.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// 2040 x 640 mm with 6 mm bars 200 mm apart under 20 mm of cover.
Slab bench(ReinforcementKind kind) {
  Slab slab = slab_on(corners_of({{}, mm(2040), mm(640)}), {}, mm(80));
  slab.reinforcement = {kind, mm(6), mm(200), mm(20)};
  return slab;
}

SteelPlan steel_of(const Slab& slab) {
  return plan_steel(slab, measure_slab(slab), {});
}

}  // namespace

// 600 mm between the outer bars: 4 bars of 2000 mm; 2000 mm: 11 bars of 600 mm. 8 + 6.6 m.
TEST_CASE("bars lie both ways with their cover all round", "[loads]") {
  const SteelPlan steel = steel_of(bench(ReinforcementKind::bar));
  REQUIRE(steel.bars.size() == 2);
  CHECK(steel.bars[0].length.in_mm() == Approx(2000));
  CHECK(steel.bars[0].number == 4);
  CHECK(steel.bars[1].length.in_mm() == Approx(600));
  CHECK(steel.bars[1].number == 11);
  CHECK(steel.bar_length.in_m() == Approx(14.6));
  CHECK(steel.mesh == Area{});
}

// The opening from x 520 to 1020 and y 120 to 520 cuts the bars at y 220 and 420 into 480 mm
// (520 - 40) and 980 mm (1020 - 40); those at 20 and 620 stay whole.
TEST_CASE("bars end at openings which have bars of their own", "[loads]") {
  Slab slab = bench(ReinforcementKind::bar);
  slab.openings = {{"sink", {{mm(520), mm(120)}, mm(500), mm(400)}, true, {}}};
  const SteelPlan steel = steel_of(slab);
  const auto number = [&](const std::string& place, double length_mm) {
    for (const BarCut& bar : steel.bars) {
      if (bar.place == place && bar.length.in_mm() == Approx(length_mm)) return bar.number;
    }
    return 0;
  };
  CHECK(number("from left to right", 2000) == 2);
  CHECK(number("from left to right", 480) == 2);
  CHECK(number("from left to right", 980) == 2);
  // 40 diameters are 240 mm: 500 + 480 mm, and 480 mm across each corner.
  CHECK(number("beside sink", 980) == 2);
  CHECK(number("across the corners of sink", 480) == 4);
}

TEST_CASE("a round or well rounded opening needs no bars across corners", "[loads]") {
  Opening opening{"sink", {{}, mm(400), mm(300)}, true, mm(24.9)};
  CHECK(has_sharp_corners(opening));
  opening.corner_radius = mm(25);
  CHECK_FALSE(has_sharp_corners(opening));
  CHECK(opening_bars(opening, {}).size() == 1);
  const Opening tap{"tap", {{}, mm(35), mm(35)}, true, mm(17.5)};
  CHECK_FALSE(has_sharp_corners(tap));
}

TEST_CASE("a bar of unknown diameter goes 300 mm past the corner", "[loads]") {
  const Opening opening{"sink", {{}, mm(400), mm(300)}, true, {}};
  const auto bars = opening_bars(opening, {ReinforcementKind::bar, {}, {}, {}});
  CHECK(bars[0].length.in_mm() == Approx(1000));
  CHECK(bars[1].length.in_mm() == Approx(600));
}

TEST_CASE("a mesh covers the top with its laps", "[loads]") {
  const SteelPlan steel = steel_of(bench(ReinforcementKind::mesh));
  CHECK(steel.mesh.si() == Approx(2.04 * 0.64 * 1.15));
  CHECK(steel.bars.empty());
  CHECK(steel_of(bench(ReinforcementKind::none)).none());
  CHECK(steel_of(bench(ReinforcementKind::fiber)).none());
}

TEST_CASE("cover is what the job asks or the grain or 20 mm", "[loads]") {
  Slab slab = bench(ReinforcementKind::mesh);
  slab.reinforcement.cover = {};
  Mix mix;
  CHECK(plan_steel(slab, measure_slab(slab), mix).cover == mm(20));
  mix.aggregate = mm(25);
  CHECK(plan_steel(slab, measure_slab(slab), mix).cover == mm(25));
  slab.reinforcement.cover = mm(30);
  CHECK(plan_steel(slab, measure_slab(slab), mix).cover == mm(30));
}

TEST_CASE("a slab narrower than two covers has no bars", "[loads]") {
  Slab slab = slab_on(corners_of({{}, mm(2000), mm(40)}), {}, mm(80));
  slab.reinforcement = {ReinforcementKind::bar, mm(6), mm(200), mm(20)};
  CHECK(steel_of(slab).none());
}
