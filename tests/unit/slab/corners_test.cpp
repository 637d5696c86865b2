// SPDX-License-Identifier: MIT
#include "slab/corners.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "cutting/cut_list.h"
#include "cutting/verify.h"
#include "slab/measure.h"
#include "slab/strips.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

constexpr Length s = Length::mm(18);
const double root2 = std::sqrt(2.0), root3 = std::sqrt(3.0);

Forms forms_18() {
  return forms_with({{"board", "board", mm(3000), mm(400), s, {}, {}}}, mm(3));
}

Forms forms_bending(double bends_to_mm) {
  Forms forms = forms_18();
  forms.bend_stock = Stock{"thin", "thin", mm(2440), mm(1220), mm(4), {}, {}};
  forms.bend_stock->bends_to = mm(bends_to_mm);
  return forms;
}

FormWork work_for(const Slab& slab, const Forms& forms) {
  MarkCounter marks;
  return form_work(slab, measure_slab(slab, s), forms, kilograms_per_m3(2300), marks);
}

/// Sides of unequal overhang keep their corners' names as a user counts.
Slab counted(Slab slab) {
  for (std::size_t k = 0; k < slab.sides.size(); ++k) {
    slab.sides[k].corner = static_cast<int>(k) + 1;
  }
  return slab;
}

const Part& part_at(const FormWork& work, const std::string& role, const std::string& place) {
  const auto found = std::find_if(work.parts.begin(), work.parts.end(), [&](const Part& p) {
    return p.role == role && (", " + p.place + ",").find(", " + place + ",") != std::string::npos;
  });
  std::string all;
  for (const Part& p : work.parts) all += p.role + ": " + p.place + "\n";
  CAPTURE(all, place);
  REQUIRE(found != work.parts.end());
  return *found;
}

Polygon hexagon(Length side) {
  const double h = root3 / 2;
  return {{Length{}, Length{}},   {side, Length{}},           {side * 1.5, side * h},
          {side, side * (2 * h)}, {Length{}, side * (2 * h)}, {side * -0.5, side * h}};
}

}  // namespace

TEST_CASE("a trapezoid table has soffits that are trapezoids", "[strips][corners]") {
  // Front 1000, back 600, 200 deep, both ends at 45 degrees; overhang 20 all round.
  const Slab slab = slab_on(
      {{mm(0), mm(0)}, {mm(1000), mm(0)}, {mm(800), mm(200)}, {mm(200), mm(200)}}, mm(20), mm(40));
  const FormWork work = work_for(slab, forms_18());
  // Turns of 135 degrees in front: each corner moves 20 tan 67.5 = 20 (1 + root 2) out along it.
  const Part& front = part_at(work, "soffit strip", "edge 1");
  CHECK(front.length.in_mm() == Approx(1000 + 40 * (1 + root2)));
  CHECK(front.left_cut_deg == Approx(67.5));
  CHECK(front.right_cut_deg == Approx(67.5));
  // Turns of 45 degrees at the back: 20 tan 22.5 = 20 (root 2 - 1).
  const Part& back = part_at(work, "soffit strip", "edge 3");
  CHECK(back.length.in_mm() == Approx(600 + 40 * (root2 - 1)));
  CHECK(back.left_cut_deg == Approx(22.5));
  // Sloping sides: 200 root 2 long, one end of each kind.
  const Part& ends = part_at(work, "soffit strip", "edge 2");
  CHECK(ends.length.in_mm() == Approx(200 * root2 + 20 * (1 + root2) + 20 * (root2 - 1)));
  CHECK(ends.left_cut_deg == Approx(67.5));
  CHECK(ends.right_cut_deg == Approx(22.5));
  // Steiner's formula with mitred corners: P d + d2 sum tan(turn/2); each end that gets longer
  // takes half its triangle off the long-point rectangle.
  const double perimeter = 1600 + 400 * root2;
  const double tangents = 2 * (1 + root2) + 2 * (root2 - 1);
  double soffits = 0;
  for (const Part& p : work.parts) {
    if (p.role != "soffit strip") continue;
    const double skew = std::tan(p.left_cut_deg * std::acos(-1.0) / 180) +
                        std::tan(p.right_cut_deg * std::acos(-1.0) / 180);
    soffits += p.quantity * p.width.in_mm() * (p.length.in_mm() - p.width.in_mm() * skew / 2);
  }
  CHECK(soffits == Approx(perimeter * 20 + 400 * tangents));
  // Edge strips: outline side + s tan of half the turn at each end.
  const Part& edge = part_at(work, "edge strip", "edge 1");
  CHECK(edge.length.in_mm() == Approx(1000 + 40 * (1 + root2) + 36 * (1 + root2)));
  CHECK(edge.right_cut_deg == Approx(67.5));
}

TEST_CASE("a hexagon has six equal mitred strips of each kind", "[strips][corners]") {
  // tan 30 = 1/root 3 at every corner.
  for (const CornerStyle style : {CornerStyle::through, CornerStyle::mitre}) {
    Forms forms = forms_18();
    forms.corner = style;
    const FormWork work = work_for(slab_on(hexagon(mm(500)), mm(25), mm(40)), forms);
    Length soffit, edge;
    for (const Part& p : work.parts) {
      CHECK(p.left_cut_deg == Approx(30));
      CHECK(p.right_cut_deg == Approx(30));
      (p.role == "edge strip" ? edge : soffit) += p.length * p.quantity;
    }
    CHECK(soffit.in_mm() == Approx(6 * (500 + 50 / root3)));
    CHECK(edge.in_mm() == Approx(6 * (500 + 50 / root3 + 36 / root3)));
  }
}

TEST_CASE("a skew wall cuts the strips beside it along its own line", "[strips][corners]") {
  // The right end slopes: turn 135 at the front, 45 at the back; it is a wall.
  Slab slab = slab_on({{mm(0), mm(0)}, {mm(1000), mm(0)}, {mm(600), mm(400)}, {mm(0), mm(400)}},
                      mm(30), mm(40));
  slab.sides[1].wall = true;
  slab.sides[1].overhang = {};
  Forms forms = forms_18();
  forms.corner = CornerStyle::mitre;
  const FormWork work = work_for(slab, forms);
  // Front: reading 135 - 90 = 45, s tan 45 = 18 longer outside; the wall's line meets the outline
  // 30 beyond the base, 30 farther right; + 30 + 18 at the left corner.
  const Part& front = part_at(work, "edge strip", "edge 1");
  CHECK(front.length.in_mm() == Approx(1000 + 30 + 30 + 18 + 18));
  CHECK(front.right_cut_deg == Approx(45));
  // Back: reading 45 - 90 = -45, nothing added; the outline is 30 shorter than the base there.
  const Part& back = part_at(work, "edge strip", "edge 3");
  CHECK(back.length.in_mm() == Approx(600 - 30 + 30 + 18));
  CHECK(back.left_cut_deg == Approx(-45));
  // Soffits: long point on the outline in front, on the base at the back.
  const Part& soffit = part_at(work, "soffit strip", "edge 1");
  CHECK(soffit.right_cut_deg == Approx(45));
  CHECK(soffit.length.in_mm() == Approx(1030 + 30));
  const Part& behind = part_at(work, "soffit strip", "edge 3");
  CHECK(behind.left_cut_deg == Approx(-45));
  CHECK(behind.length.in_mm() == Approx(600 + 30));
}

TEST_CASE("a wall almost in a strip's line ends it square to be scribed", "[strips][corners]") {
  // The wall leaves the front's line by 20 degrees and meets the back at 160, on the ground: cut
  // along it the front's strip would lose 18 cot 20 = 49 outside, and the back's gain as much.
  const double along = 500 * std::cos(std::acos(-1.0) / 9);
  const double deep = 500 * std::sin(std::acos(-1.0) / 9);
  Slab slab =
      slab_on({{mm(0), mm(0)}, {mm(1000), mm(0)}, {mm(1000 + along), mm(deep)}, {mm(0), mm(deep)}},
              {}, mm(100));
  slab.support = Support::ground;
  slab.sides[1].wall = true;
  const FormWork work = work_for(slab, forms_18());
  // Both pass the short left side by 18.
  const Part& front = part_at(work, "edge strip", "edge 1 (scribe the right end to the wall)");
  CHECK(front.length.in_mm() == Approx(1000 + 18));
  CHECK(front.right_cut_deg == 0);
  // The wall runs away from the back's strip: nothing to scribe.
  const Part& back = part_at(work, "edge strip", "edge 3");
  CHECK(back.length.in_mm() == Approx(1000 + along + 18));
  CHECK(back.left_cut_deg == 0);
}

TEST_CASE("a corner out of square by less than two degrees counts as square", "[strips][corners]") {
  const auto leaning = [](double by) {
    return slab_on({{mm(0), mm(0)}, {mm(1000), mm(0)}, {mm(1000 + by), mm(500)}, {mm(0), mm(500)}},
                   mm(20), mm(40));
  };
  // 500 tan 2 degrees = 17.46.
  for (const Part& p : work_for(leaning(17), forms_18()).parts) {
    CHECK((p.left_cut_deg == 0 && p.right_cut_deg == 0));
  }
  const FormWork work = work_for(leaning(18), forms_18());
  CHECK(part_at(work, "edge strip", "edge 1").right_cut_deg ==
        Approx(45 - std::atan(18.0 / 500) * 90 / std::acos(-1.0)));
}

TEST_CASE("a corner cut off straight has a strip of its own", "[strips][corners]") {
  Slab slab = counted(slab_on(corners_of({{}, mm(1000), mm(600)}), mm(20), mm(40)));
  slab.corner_cuts = {{1, mm(100), false}};
  const FormWork work = work_for(slab, forms_18());
  // 100 root 2 between two turns of 45: tan 22.5 = root 2 - 1 at each end.
  const Part& cut = part_at(work, "edge strip", "corner 2");
  CHECK(cut.length.in_mm() == Approx(100 * root2 + 36 * (root2 - 1)));
  CHECK(cut.left_cut_deg == Approx(22.5));
  CHECK(cut.right_cut_deg == Approx(22.5));
  CHECK(cut.width == mm(58));
  // The front is the longer side: it passes at the left and is 100 short at the right.
  const Part& front = part_at(work, "edge strip", "edge 1");
  CHECK(front.length.in_mm() == Approx(1040 - 100 + 18 + 18 * (root2 - 1)));
  CHECK(front.left_cut_deg == 0);
  CHECK(front.right_cut_deg == Approx(22.5));
  CHECK(part_at(work, "soffit strip", "edge 1 (cut to the cut-off corner)").length == mm(1040));
}

TEST_CASE("a rounded corner is bent from two layers and backed at both ends", "[strips][corners]") {
  Slab slab = counted(slab_on(corners_of({{}, mm(1000), mm(600)}), mm(20), mm(40)));
  slab.corner_cuts = {{1, mm(150), true}};
  const FormWork work = work_for(slab, forms_bending(150));
  // A quarter turn: (150 + 2) pi/2 and (150 + 6) pi/2.
  const double quarter = std::acos(0.0);
  const Part& inner = part_at(work, "edge strip", "corner 2 (bent, layer 1 from the concrete)");
  CHECK(inner.length.in_mm() == Approx(152 * quarter));
  CHECK(inner.stock == "thin");
  CHECK(inner.width == mm(58));
  CHECK(part_at(work, "edge strip", "corner 2 (bent, layer 2 from the concrete)").length.in_mm() ==
        Approx(156 * quarter));
  const Part& front = part_at(work, "edge strip", "edge 1");
  CHECK(front.length == mm(1040 - 150 + 18));
  CHECK(front.right_cut_deg == 0);
  CHECK(part_at(work, "cleat", "corner 2").quantity == 2);
  CHECK(work.quantities.splices == 0);
  // 892 + 490 + 1076... : front 908, right 490, back 1076, left 640, and the arc.
  CHECK(work.quantities.edge.in_mm() == Approx(908 + 490 + 1076 + 640 + 150 * quarter));
  // Edge faces: perimeter 3360 - 300 + 150 pi/2, 40 high; soffits: outline less base.
  const double round = 150 * 150 * (1 - quarter / 2);
  CHECK(work.quantities.formed.si() * 1e6 ==
        Approx((3360 - 300 + 150 * quarter) * 40 + 1040 * 640 - round - 600000));
}

TEST_CASE("a radius too small to bend leaves a square form with a filler", "[strips][corners]") {
  Slab slab = counted(slab_on(corners_of({{}, mm(1000), mm(600)}), mm(20), mm(40)));
  slab.corner_cuts = {{1, mm(50), true}};
  const FormWork work = work_for(slab, forms_bending(150));
  const Part& filler = part_at(work, "knock-out block", "corner 2 (filler for the rounded corner)");
  CHECK(filler.stock.empty());
  CHECK(filler.length.in_mm() == Approx(50));
  CHECK(filler.width.in_mm() == Approx(50));
  CHECK(*filler.height == mm(40));  // it stands on the soffit, inside the strips
  CHECK(part_at(work, "edge strip", "edge 1, edge 3").length == mm(1076));
}

TEST_CASE("a re-entrant corner rounded tightly gets a block between its strips",
          "[strips][corners]") {
  Slab slab = counted(slab_on({{mm(0), mm(0)},
                               {mm(1000), mm(0)},
                               {mm(1000), mm(400)},
                               {mm(500), mm(400)},
                               {mm(500), mm(900)},
                               {mm(0), mm(900)}},
                              mm(20), mm(40)));
  slab.corner_cuts = {{3, mm(50), true}};
  const FormWork tight = work_for(slab, forms_bending(50));  // the outer layer would bend to 42
  const Part& block =
      part_at(tight, "knock-out block", "corner 4 (cut to the arc, between the strips)");
  CHECK(block.length.in_mm() == Approx(50));
  // Outline edge 3: 1020 - 520 = 500, less 50, and 18 where it butts or passes at corner 3.
  const Part& step = part_at(tight, "edge strip", "edge 3");
  CHECK(step.length == mm(500 - 50 + 18));
  // The triangle under the arc: 50 root 2 along its chord, 50/root 2 high.
  const Part& under =
      part_at(tight, "soffit strip", "corner 4 (a triangle under the inner corner)");
  CHECK(under.length.in_mm() == Approx(50 * root2));
  CHECK(under.width.in_mm() == Approx(50 / root2));

  slab.corner_cuts[0].size = mm(58);  // now the outermost face bends to 50
  const FormWork wide = work_for(slab, forms_bending(50));
  CHECK(part_at(wide, "edge strip", "corner 4 (bent, layer 2 from the concrete)").length.in_mm() ==
        Approx((58 - 6) * std::acos(0.0)));
}

TEST_CASE("an apron has a lower soffit and foam and an end piece at plain sides",
          "[strips][corners]") {
  Slab slab = counted(slab_on(corners_of({{}, mm(1000), mm(600)}), mm(60), mm(40)));
  slab.sides[0].apron = true;
  slab.apron_depth = mm(80);
  slab.sides[3].wall = true;
  slab.sides[3].overhang = {};
  const FormWork work = work_for(slab, forms_18());
  // 18 + 40 + 80; outline 1060 and 18 past the right end where it passes; none at the wall.
  const Part& edge = part_at(work, "edge strip", "edge 1");
  CHECK(edge.width == mm(138));
  CHECK(edge.length == mm(1060 + 18));
  const Part& soffit = part_at(work, "soffit strip", "edge 1 (lower down, under the apron)");
  CHECK(soffit.width == mm(60));
  CHECK(soffit.length == mm(1060));
  const Part& foam =
      part_at(work, "knock-out block", "edge 1 (foam against the base, behind the apron)");
  CHECK(foam.height == mm(80));
  // From the wall to the end piece, which stands 60 past the base.
  CHECK(foam.length.in_mm() == Approx(1060));
  CHECK(foam.stock.empty());
  const Part& end = part_at(work, "edge strip", "edge 1 (closes the right end of the apron)");
  CHECK(end.length == mm(60));
  CHECK(end.width == mm(98));
  CHECK(std::none_of(work.parts.begin(), work.parts.end(),
                     [](const Part& p) { return p.place.find("left end") != std::string::npos; }));
}

TEST_CASE("the form faces of a slab out of level with a fall and an apron add up by hand",
          "[strips][corners]") {
  Slab slab = counted(slab_on(corners_of({{}, mm(1000), mm(600)}), mm(60), mm(40)));
  slab.sides[0].apron = true;
  slab.apron_depth = mm(80);
  slab.sides[3].wall = true;
  slab.sides[3].overhang = {};
  // The outline is 1060 from the wall and 720 from y = -60. Low grows by 1 mm in 100 from the wall;
  // the top rises by 2 mm in 100 from the front.
  slab.levels = {{{mm(0), mm(0)}, {}}, {{mm(1000), mm(0)}, mm(10)}, {{mm(0), mm(600)}, {}}};
  slab.fall = Fall{0.02, 0};
  const double front = 1060 * (40 + 80 + 5.3);
  const double right = 720 * (40 + 10.6 + 7.2);
  const double back = 1060 * (40 + 5.3 + 14.4);
  const double soffits = 1060 * 720 - 1000 * 600;
  const double foam = 1060 * 80, apron_end = (60 - 18) * 80;
  CHECK(work_for(slab, forms_18()).quantities.formed.si() * 1e6 ==
        Approx(front + right + back + soffits + foam + apron_end));
  // At its thickest, the apron below not counted: low 10.6 at the right, rise 14.4 at the back.
  const std::vector<SidePlan> sides = work_for(slab, forms_18()).sides;
  const double thickest[] = {40 + 10.6, 40 + 10.6 + 14.4, 40 + 10.6 + 14.4, 40 + 14.4};
  REQUIRE(sides.size() == 4);
  for (std::size_t k = 0; k < 4; ++k) CHECK(sides[k].thickness.in_mm() == Approx(thickest[k]));

  // A corner rounded by 50, too tight to bend, between the right and the back: the filler's arc
  // for 50 of each, and its corner off the soffit. Along the arc low is 10.1 + 0.5 x 2/pi and rise
  // 13.4 + 1 x 2/pi on average, for the mean of a quarter's cosine is 2/pi.
  slab.corner_cuts = {{2, mm(50), true}};
  const double pi = 2 * std::acos(0.0), arc = 25 * pi;
  const double on_arc = arc * (40 + 10.1 + 13.4 + 1.5 * 2 / pi);
  const double off_right = 50 * (40 + 10.6 + 13.9), off_back = 50 * (40 + 10.35 + 14.4);
  CHECK(work_for(slab, forms_18()).quantities.formed.si() * 1e6 ==
        Approx(front + right + back + soffits + foam + apron_end + on_arc - off_right - off_back -
               (2500 - 625 * pi))
            .epsilon(1e-5));  // the arc by chords
}

TEST_CASE("a base out of level and a fall make edge strips higher along them",
          "[strips][corners]") {
  Slab slab = slab_on(corners_of({{}, mm(1000), mm(600)}), mm(20), mm(40));
  // Low grows by 1 mm in 100 to the right: 10.2 at the outline's right, 0 at the left reading.
  slab.levels = {{{mm(0), mm(0)}, {}}, {{mm(1000), mm(0)}, mm(10)}, {{mm(0), mm(600)}, {}}};
  const FormWork work = work_for(slab, forms_18());
  CHECK(part_at(work, "edge strip", "edge 2").width.in_mm() == Approx(58 + 10.2));
  CHECK(part_at(work, "edge strip", "edge 4").width.in_mm() == Approx(58 - 0.2));
  // A knock-out is no higher than the slab at its thinnest: 2 mm low at 200 from the base's left.
  slab.openings.push_back({"sink", {{mm(220), mm(200)}, mm(300), mm(200)}, true});
  CHECK(part_at(work_for(slab, forms_18()), "knock-out strip", "sink").width.in_mm() ==
        Approx(40 + 2));
}

TEST_CASE("a round opening is a block of stacked sheet", "[strips][corners]") {
  Slab slab = slab_on(corners_of({{}, mm(1000), mm(600)}), mm(20), mm(40));
  slab.openings.push_back({"basin", {{mm(300), mm(150)}, mm(300), mm(300)}, true, mm(150)});
  const FormWork work = work_for(slab, forms_18());
  const Part& block = part_at(work, "knock-out block", "basin (cut round)");
  CHECK(block.length == mm(300));
  CHECK(*block.height == mm(40));
  CHECK(work.quantities.knock_out == Length{});
}

TEST_CASE("bent parts are cut from bend stock alone", "[strips][cutting]") {
  Slab slab = counted(slab_on(corners_of({{}, mm(1000), mm(600)}), mm(20), mm(40)));
  slab.corner_cuts = {{1, mm(150), true}};
  const Forms forms = forms_bending(150);
  std::vector<Stock> boards = forms.strip_stock;
  boards.push_back(*forms.bend_stock);
  const std::vector<OnHand> on_hand{{"thin", 1, {}, {}}};
  const Saw saw{mm(3), {}};
  const CutList list = cut_parts(work_for(slab, forms).parts, boards, {}, on_hand, saw);
  CHECK(cut_violations(list, boards, {}, on_hand, saw) == std::vector<std::string>{});
  CHECK(list.unplaced.empty());
  for (const Part& p : list.parts) {
    if (p.stock.empty()) continue;
    CHECK((p.stock == "thin") == (p.place.find("bent") != std::string::npos));
  }
  REQUIRE(list.totals.size() == 2);
  CHECK(list.totals[1].stock == "thin");
  CHECK(list.totals[1].on_hand == 1);
  CHECK(list.totals[1].buy == 0);
}

TEST_CASE("a slanted recess too narrow for its strips is never silent", "[strips][corners]") {
  // A notch whose mouth is narrower than its bottom: its sides lean towards each other.
  const Slab slab = slab_on({{mm(0), mm(0)},
                             {mm(1000), mm(0)},
                             {mm(1000), mm(500)},
                             {mm(510), mm(500)},
                             {mm(560), mm(300)},
                             {mm(430), mm(300)},
                             {mm(480), mm(500)},
                             {mm(0), mm(500)}},
                            {}, mm(40));
  const FormWork work = work_for(slab, forms_18());
  CHECK(std::any_of(work.parts.begin(), work.parts.end(),
                    [](const Part& p) { return p.role == "edge strip" && p.stock.empty(); }));
}

TEST_CASE("a bend has a cleat towards a straight strip and none towards another bend",
          "[strips][corners]") {
  // 640 x 640 outline: a radius of 320 at all corners leaves a circle, no straight edge at all; at
  // two neighbours it leaves one joint between bends and two with straight strips.
  Slab slab = counted(slab_on(corners_of({{}, mm(600), mm(600)}), mm(20), mm(40)));
  const auto cleats = [&](const std::vector<std::size_t>& corners) {
    slab.corner_cuts.clear();
    for (const std::size_t corner : corners) slab.corner_cuts.push_back({corner, mm(320), true});
    int number = 0;
    for (const Part& part : work_for(slab, forms_bending(150)).parts) {
      if (part.role == "cleat") number += part.quantity;
    }
    return number;
  };
  CHECK(cleats({0}) == 2);
  CHECK(cleats({0, 1}) == 2);
  CHECK(cleats({0, 1, 2, 3}) == 0);
}
