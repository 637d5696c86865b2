// SPDX-License-Identifier: MIT
#include "slab/stiffness.h"

#include <catch2/catch.hpp>

#include "slab/measure.h"
#include "slab/strips.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

constexpr Density fresh = kilograms_per_m3(2300);  // w = 2300 x 9.80665 = 22555.3 N/m3

LoadedStrip strip(double head_mm, double height_mm, double thickness_mm, double grip_mm) {
  return {"front", mm(head_mm), mm(height_mm), mm(thickness_mm), mm(grip_mm), false};
}

Forms boards(double thickness_mm) {
  Forms forms = forms_with({{"b", "b", mm(3000), mm(300), mm(thickness_mm), {}, {}}}, mm(3));
  forms.screw_spacing = mm(200);
  forms.screws_may_tighten = true;
  return forms;
}

/// 2400 x 500 mm.
Slab bench(double thickness_mm, double overhang_mm) {
  return slab_on(corners_of({{}, mm(2400), mm(500)}), mm(overhang_mm), mm(thickness_mm));
}

FormSpacing spacing_for(const Slab& slab, const Forms& forms) {
  return form_spacing(slab, forms, Heights(slab), fresh);
}

}  // namespace

// 150 pcf over 8 ft: 1200 psf or 8.33 psi (a trade journal's answer on form pressure, read); 6 in
// of it weigh 75 psf (US Navy Builder training manual, wall form design, read). 2 in of it press 25
// psf, push 2.0833 lb/ft and act 0.667 in up; 0.05 m at 23.56 kN/m3 press 1.178 kPa (p = w h, ACI
// 347 2.2.2, from memory).
TEST_CASE("fresh mix presses like a liquid of its density", "[stiffness]") {
  const Density heavy = pounds_per_ft3(150);
  CHECK(in_psf(liquid_pressure(heavy, in(96))) == Approx(1200));
  CHECK(in_psi(liquid_pressure(heavy, in(96))) == Approx(8.333333).epsilon(1e-6));
  CHECK(in_psf(liquid_pressure(heavy, in(6))) == Approx(75));
  CHECK(in_psf(liquid_pressure(heavy, in(2))) == Approx(25));
  const double newtons_per_metre = 2.083333 * 0.45359237 * 9.80665 / 0.3048;
  CHECK(side_push(heavy, in(2)).si() == Approx(newtons_per_metre).epsilon(1e-6));
  // About a foot of grip g, pull x g/2 = push x (arm + g).
  LoadedStrip held = strip(2 * 25.4, 3 * 25.4, 19, 25.4);
  CHECK(screw_pull(held, heavy, Length::m(1)) / side_push(heavy, in(2)) ==
        Approx((0.666667 + 1) / 0.5).epsilon(1e-6));
  const Density metric = kilograms_per_m3(23563.12 / 9.80665);
  CHECK(in_kilopascals(liquid_pressure(metric, mm(50))) == Approx(1.178156));
}

// q = 22555.3 x 0.038^2/2 = 16.285 N/m; E I = 1.8e9 x 0.038 x 0.016^3/12 = 23.347 N m2;
// 5 x 16.285 x 0.2^4/(384 x 23.347) = 14.53 um.
TEST_CASE("a worktop's strip bows by hundredths of a millimetre between its screws",
          "[stiffness]") {
  CHECK(side_push(fresh, mm(38)).si() == Approx(16.285).epsilon(1e-4));
  CHECK(bow(strip(38, 38, 16, 16), fresh, mm(200)).in_mm() == Approx(0.014532).epsilon(1e-3));
}

// 22555.3 x 0.15^3/6 = 12.687 N m/m. About the lower edge of a 16 mm soffit: push 253.75 N/m at
// 50 + 16 mm, screws at 8 mm: 2093.4 N/m, 418.7 N every 200 mm. Lapped 50 mm over the base's face:
// 253.75 x (50 + 50)/25 = 1015.0 N/m.
TEST_CASE("tipping pulls on the screws along the foot of a tall strip", "[stiffness]") {
  CHECK(side_push(fresh, mm(150)).si() * 0.15 / 3 == Approx(12.687).epsilon(1e-4));
  CHECK(screw_pull(strip(150, 166, 16, 16), fresh, mm(200)).si() == Approx(418.68).epsilon(1e-4));
  CHECK(screw_pull(strip(150, 200, 16, 50), fresh, mm(200)).si() == Approx(203.0).epsilon(1e-4));
  LoadedStrip staked = strip(150, 150, 16, 0);
  staked.staked = true;
  CHECK(screw_pull(staked, fresh, mm(200)) == Force{});
}

TEST_CASE("a strip taller than five times its thickness needs kickers", "[stiffness]") {
  CHECK_FALSE(needs_kickers(strip(80, 96, 16, 16)));
  CHECK(needs_kickers(strip(80.1, 96.1, 16, 16)));
  LoadedStrip staked = strip(80.1, 80.1, 16, 0);
  staked.staked = true;
  CHECK_FALSE(needs_kickers(staked));
}

// At 38 mm the screws may be 250/58.4 = 4.3 m apart for pull and 1.6 m for bow; at 150 mm
// 250/2093.4 = 119.4 mm; on a lap 250/1015 = 246 mm.
TEST_CASE("a usual screw spacing is tightened where the mix pushes harder", "[stiffness]") {
  CHECK(spacing_for(bench(38, 25), boards(16)).screws == mm(200));
  CHECK(spacing_for(bench(150, 25), boards(16)).screws == mm(115));
  CHECK(spacing_for(bench(150, 0), boards(16)).screws == mm(200));
  CHECK(spacing_for(bench(600, 25), boards(16)).screws == mm(50));
  Forms given = boards(16);
  given.screws_may_tighten = false;
  CHECK(spacing_for(bench(150, 25), given).screws == mm(200));
}

// T 100 mm: q = 112.78 N/m; a4 = 384 x 1.8e9 x 0.1 x s3/12 x 0.001/(5 x q). s 18: 0.0596, 494 mm;
// s 20: 0.0817, 535 mm; s 25: 0.1596, 632 mm. T 500 mm, s 18: q = 2819.4, a4 = 0.0119, 330 mm;
// T 1.5 m, s 18: q = 25375, a4 = 0.0040, 251 mm.
TEST_CASE("stakes stand closer where the strip would bow", "[stiffness]") {
  const auto stakes = [](double thickness_mm, double board_mm) {
    Slab slab = bench(thickness_mm, 0);
    slab.support = Support::ground;
    return spacing_for(slab, boards(board_mm)).stakes.in_mm();
  };
  CHECK(stakes(100, 18) == 450);
  CHECK(stakes(100, 20) == 500);
  CHECK(stakes(100, 25) == 600);
  CHECK(stakes(500, 18) == 300);
  CHECK(stakes(1500, 18) == 250);
  CHECK(stakes(1500, 10) == 200);
  CHECK(spacing_for(bench(100, 25), boards(18)).stakes == Length{});
}

TEST_CASE("the head of a strip counts hollow and rise and apron", "[stiffness]") {
  Slab slab = bench(40, 25);
  slab.levels = {{{mm(0), mm(0)}, mm(0)}, {{mm(2400), mm(0)}, mm(20)}, {{mm(0), mm(500)}, mm(0)}};
  slab.sides[1].apron = true;
  slab.apron_depth = mm(60);
  slab.sides[2].wall = true;
  slab.sides[2].overhang = {};
  const auto strips = loaded_strips(slab, boards(16), Heights(slab));
  REQUIRE(strips.size() == 3);
  CHECK(strips[0].side == "edge 1");
  // The readings' plane falls 20 mm in 2400 mm; the slab runs 25 mm past it.
  CHECK(strips[0].head.in_mm() == Approx(40 + 20 * 2425.0 / 2400));
  CHECK(strips[1].head.in_mm() == Approx(40 + 20 * 2425.0 / 2400 + 60));
  CHECK(strips[1].height.in_mm() == Approx(strips[1].head.in_mm() + 16));
  CHECK(strips[2].side == "edge 4");
  CHECK(strips[2].head.in_mm() == Approx(40));
}

// T 50, s 16, o 150 mm: load 1127.8 + 2400 + 0.016 x 700 x 9.80665 = 3637.6 Pa; q = 3637.6 x 0.075
// = 272.82 N/m. Stress: 8 x 3e6 x 0.15 x 0.016^2/6/q = 0.563, 750 mm. Bow: E I = 92.16 N m2,
// 384 E I x 0.001/(5 q) = 0.02594, 401 mm. Across: 5 x 3637.6 x 0.15^4/(384 x 614.4) = 0.039 mm.
TEST_CASE("props stand as close as the soffit panel bends", "[stiffness]") {
  const WideSoffit soffit{"front", mm(150), mm(16), mm(50)};
  CHECK(soffit_load(soffit, fresh).si() == Approx(3637.6).epsilon(1e-4));
  CHECK(prop_span(soffit, fresh).in_mm() == Approx(401.3).epsilon(1e-3));
  CHECK(sag_across(soffit, fresh).in_mm() == Approx(0.03903).epsilon(1e-3));
  CHECK(spacing_for(bench(50, 150), boards(16)).props == mm(400));
  CHECK(spacing_for(bench(50, 150), boards(30)).props == mm(600));
  CHECK(spacing_for(bench(50, 75), boards(16)).props == Length{});
  CHECK(spacing_for(bench(50, 75.1), boards(16)).props == mm(400));
}

// The long soffits pass: 2700 mm every 400 mm are 8 props each, 500 mm are 3.
TEST_CASE("a soffit panel has props to cut on site", "[stiffness]") {
  const Slab slab = bench(50, 150);
  MarkCounter marks;
  const FormWork work = form_work(slab, measure_slab(slab), boards(16), fresh, marks);
  CHECK(work.quantities.props == 2 * 8 + 2 * 3);
  CHECK(work.quantities.props_apart == mm(400));
  CHECK(work.quantities.screw_spacing == mm(200));
  int props = 0;
  for (const Part& part : work.parts) {
    if (part.role != "prop") continue;
    CHECK((part.length == Length{} && part.stock.empty() && part.mark[0] == 'R'));
    props += part.quantity;
  }
  CHECK(props == work.quantities.props);
}

TEST_CASE("brackets are counted along the sides they carry", "[stiffness]") {
  Slab slab = bench(50, 200);
  CHECK(bracket_count(slab) == 0);
  slab.sides[0].bracket = true;  // 2400 mm: every 600 mm and one more
  CHECK(bracket_count(slab) == 5);
  slab.sides[1].bracket = true;  // 500 mm: one at each end
  CHECK(bracket_count(slab) == 7);
  slab.sides[0].overhang = {};
  CHECK(bracket_count(slab) == 2);
}

TEST_CASE("something stands at each end and no gap is wider than the spacing", "[stiffness]") {
  CHECK(count_along(mm(600), mm(200)) == 4);
  CHECK(count_along(mm(601), mm(200)) == 5);
  CHECK(count_along(mm(100), mm(200)) == 2);
  // 0.1 + 0.2 of rounding takes no extra one
  CHECK(count_along(in(0.1) + in(0.2), in(0.1)) == 4);
}

TEST_CASE("thicker boards reach farther and deeper mix asks for closer holds", "[stiffness]") {
  Draw draw(7);
  for (int i = 0; i < 300; ++i) {
    const double depth = draw.whole(20, 600), board = draw.whole(9, 40);
    const double overhang = draw.one_in(3) ? 0 : draw.whole(10, 300);
    Slab slab = bench(depth, overhang), deeper = bench(depth + 10, overhang);
    if (draw.one_in(3)) {
      slab = bench(depth, 0), deeper = bench(depth + 10, 0);
      slab.support = deeper.support = Support::ground;
    }
    CAPTURE(depth, board, overhang);
    const FormSpacing here = spacing_for(slab, boards(board));
    const FormSpacing thick = spacing_for(slab, boards(board + 3));
    const FormSpacing deep = spacing_for(deeper, boards(board));
    CHECK((thick.screws >= here.screws && thick.stakes >= here.stakes));
    CHECK((deep.screws <= here.screws && deep.stakes <= here.stakes && deep.props <= here.props));
    CHECK(thick.props >= here.props);
    CHECK((here.screws >= mm(50) && here.screws <= mm(200)));
    for (const LoadedStrip& one : loaded_strips(slab, boards(board), Heights(slab))) {
      if (here.screws == mm(50) || one.staked) continue;
      CHECK(bow(one, fresh, here.screws) <= most_bow);
      CHECK(screw_pull(one, fresh, here.screws) <= screw_holds * (1 + 1e-9));
    }
  }
}
