// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "loads/cantilever.h"
#include "slab/measure.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

constexpr Density heavy = kilograms_per_m3(2310);

std::optional<Cantilever> worst_of(const Slab& slab, const Mix& mix = {}) {
  SlabPlan plan = measure_slab(slab, mm(16));
  plan.mass = plan.concrete * heavy;
  return worst_cantilever(slab, plan, mix, mm(16));
}

double mpa(Pressure p) {
  return in_megapascals(p);
}

}  // namespace

// A strip 12 in wide and 2 in thick, 10 in out, 150 pcf, 50 lb at its end: S = 8 in3, M = 104.17 +
// 500 in lb, 75.52 psi (statics of a cantilever, from memory). Here 1 kN on 300 mm becomes the 50
// lb by its ratio.
TEST_CASE("a loaded strip bends as the textbook's cantilever", "[loads]") {
  const Pressure own = own_weight_stress(pounds_per_ft3(150), in(2), in(10), in(2));
  CHECK(in_psi(own) == Approx(104.1667 / 8).epsilon(1e-5));
  const double fifty_pounds = 50 * 0.45359237 * standard_gravity;
  const Pressure kilonewton = leaning_stress(in(10), in(2), in(12));
  CHECK(in_psi(own + kilonewton * (fifty_pounds / 1000)) == Approx(75.52083).epsilon(1e-5));
}

// 250 mm out, 50 mm thick, 2310 kg/m3 and 400 N a metre at the edge (1 kN on 2.5 m):
// m = 2310 x 9.80665 x 0.05 x 0.25^2/2 = 35.40 N m/m, x 6/0.05^2 = 0.0850 MPa;
// m = 400 x 0.25 = 100 N m/m, x 6/0.05^2 = 0.240 MPa.
TEST_CASE("an overhang of 250 mm by hand", "[loads]") {
  CHECK(mpa(own_weight_stress(heavy, mm(50), mm(250), mm(50))) == Approx(0.0850).epsilon(0.001));
  CHECK(mpa(leaning_stress(mm(250), mm(50), mm(2500))) == Approx(0.240));
}

// The tasting bar's front: 10 in (0.254 m) out, 2 in (0.0508 m) thick, panel 1/2 in past the base's
// face: 0.0381 m deep. Own weight at 2240 kg/m3: 3 x 2240 x 9.80665 x 0.0508 x (0.254/0.0381)^2 =
// 0.1488 MPa. Leaning: b = 0.300 + 0.508 = 0.808 m; 6 x 1000 x 0.254/(0.808 x 0.0381^2) = 1.2993
// MPa.
TEST_CASE("the bar's overhang by hand", "[loads]") {
  Slab slab = slab_on(corners_of({{}, in(84), in(24)}), in(1), in(2));
  add_panel(slab, in(0.5), in(0.5));
  slab.sides[0].overhang = in(10);
  CHECK(root_depth(slab, slab.sides[0]).in_in() == Approx(1.5));
  CHECK(mpa(own_weight_stress(kilograms_per_m3(2240), in(2), in(10), in(1.5))) ==
        Approx(0.1488).epsilon(0.001));
  const auto worst = worst_of(slab);
  REQUIRE(worst.has_value());
  CHECK(worst->side == "edge 1");
  CHECK(worst->width.in_mm() == Approx(808));
  CHECK(worst->corner);
  CHECK(mpa(worst->leaning) == Approx(1.2993).epsilon(0.0005));
  CHECK(worst->apron == Pressure{});
  CHECK_FALSE(worst->strength.has_value());
}

TEST_CASE("a panel that stops at the face leaves the whole thickness", "[loads]") {
  Slab slab = slab_on(corners_of({{}, mm(1000), mm(600)}), mm(100), mm(50));
  add_panel(slab, mm(0), mm(10));
  CHECK(root_depth(slab, slab.sides[0]) == mm(50));
  slab.sides[0].panel_overhang = mm(-5);
  CHECK(root_depth(slab, slab.sides[0]) == mm(50));
  slab.sides[0].panel_overhang = mm(1);
  CHECK(root_depth(slab, slab.sides[0]) == mm(40));
}

TEST_CASE("walls and brackets and flush sides do not hang free", "[loads]") {
  Slab slab = slab_on(corners_of({{}, mm(1000), mm(600)}), mm(0), mm(50));
  CHECK_FALSE(worst_of(slab).has_value());
  slab.sides[1].overhang = mm(200);
  REQUIRE(worst_of(slab).has_value());
  CHECK_FALSE(worst_of(slab)->corner);
  slab.sides[1].bracket = true;
  CHECK_FALSE(worst_of(slab).has_value());
  slab.sides[1].bracket = false;
  slab.sides[1].wall = true;
  CHECK_FALSE(worst_of(slab).has_value());
}

TEST_CASE("a short edge holds a person with no more than its length", "[loads]") {
  CHECK(leaning_width(mm(100), mm(2000)) == mm(500));
  CHECK(leaning_width(mm(100), mm(500)) == mm(500));
  CHECK(leaning_width(mm(100), mm(400)) == mm(400));
}

// An apron 80 - 16 = 64 mm thick and 100 mm deep, its middle 80 - 32 = 48 mm from the face:
// m = 2310 x 9.80665 x 0.064 x 0.1 x 0.048 = 6.959 N m/m, x 6/0.05^2 = 0.0167 MPa.
TEST_CASE("an apron hangs on its overhang", "[loads]") {
  Slab slab = slab_on(corners_of({{}, mm(1000), mm(600)}), mm(80), mm(50));
  slab.apron_depth = mm(100);
  for (Side& side : slab.sides) side.apron = true;
  const auto worst = worst_of(slab);
  REQUIRE(worst.has_value());
  CHECK(mpa(worst->apron) == Approx(0.0167).epsilon(0.005));
  CHECK(worst->stress() > worst->own + worst->leaning);
}

// EN 1992-1-1 table 3.1, from memory: fctm 1.6 MPa at fck 12, 2.2 at 20, 2.9 at 30, 3.5 at 40.
TEST_CASE("tensile strength follows the Eurocode's table", "[loads]") {
  CHECK(mpa(tensile_strength(megapascals(12))) == Approx(1.6).margin(0.05));
  CHECK(mpa(tensile_strength(megapascals(20))) == Approx(2.2).margin(0.05));
  CHECK(mpa(tensile_strength(megapascals(30))) == Approx(2.9).margin(0.05));
  CHECK(mpa(tensile_strength(megapascals(40))) == Approx(3.5).margin(0.05));
  CHECK(mpa(tensile_strength(Pressure{})) == 0);
  CHECK(mpa(compressive_for(tensile_strength(megapascals(27)))) == Approx(27));
}

TEST_CASE("the strength is the label's at 28 days or its last before", "[loads]") {
  Mix mix;
  CHECK_FALSE(label_strength(mix).has_value());
  mix.strength = {{hours(3), megapascals(10)}, {days(1), megapascals(20)}};
  CHECK(mpa(*label_strength(mix)) == Approx(20));
  mix.strength.push_back({days(28), megapascals(30)});
  mix.strength.push_back({days(90), megapascals(40)});
  CHECK(mpa(*label_strength(mix)) == Approx(30));
  mix.strength = {{days(56), megapascals(35)}, {days(90), megapascals(40)}};
  CHECK(mpa(*label_strength(mix)) == Approx(35));
}

TEST_CASE("twice the thickness takes a quarter of a person's stress", "[loads]") {
  CHECK(leaning_stress(mm(200), mm(80), mm(700)) * 4 == leaning_stress(mm(200), mm(40), mm(700)));
  // The own weight grows with the thickness too.
  CHECK(own_weight_stress(heavy, mm(80), mm(200), mm(80)) * 2 ==
        own_weight_stress(heavy, mm(40), mm(200), mm(40)));
}
