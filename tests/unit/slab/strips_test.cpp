// SPDX-License-Identifier: MIT
#include "slab/strips.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "slab/measure.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

FormWork work_for(const Slab& slab, const Forms& forms) {
  MarkCounter marks;
  return form_work(slab, measure_slab(slab), forms, kilograms_per_m3(2300), marks);
}

struct Row {
  std::string mark, role;
  double width_in, length_in;
  int quantity;
  std::string place;
  bool operator==(const Row&) const = default;
};
[[maybe_unused]] std::ostream& operator<<(std::ostream& out, const Row& r) {
  return out << r.mark << ' ' << r.role << ' ' << r.width_in << " x " << r.length_in << " x"
             << r.quantity << ' ' << r.place << '\n';
}

std::vector<Row> rows(const FormWork& work) {
  std::vector<Row> out;
  for (const Part& p : work.parts) {
    out.push_back({p.mark, p.role, p.width.in_in(), p.length.in_in(), p.quantity, p.place});
  }
  return out;
}

/// The potting bench's boards and, for the rest, boards of 3/4 in.
const Forms plain = forms_with({board(84, 13.5)}, in(0.125), in(0.125));
const Forms thick = forms_with({board(96, 12, 0.75)}, in(0.125), in(0.25));

Slab ell_slab(Length overhang) {
  Slab slab = slab_on({{in(0), in(0)},
                       {in(60), in(0)},
                       {in(60), in(20)},
                       {in(25), in(20)},
                       {in(25), in(50)},
                       {in(0), in(50)}},
                      overhang, in(1.5));
  return slab;
}

const Part& part_at(const FormWork& work, const std::string& role, const std::string& place) {
  const auto found = std::find_if(work.parts.begin(), work.parts.end(), [&](const Part& p) {
    return p.role == role && p.place == place;
  });
  REQUIRE(found != work.parts.end());
  return *found;
}

}  // namespace

TEST_CASE("the potting bench needs the strips worked by hand", "[strips]") {
  const FormWork work = work_for(potting_bench(), plain);
  CHECK(rows(work) == std::vector<Row>{
                          {"S1", "soffit strip", 1.125, 78.25, 2, "front, back"},
                          {"S2", "soffit strip", 1.125, 24, 2, "right, left"},
                          {"E1", "edge strip", 2.5, 79.5, 2, "front, back"},
                          {"E2", "edge strip", 2.5, 26.25, 2, "right, left"},
                      });
  CHECK(work.quantities.soffit == in(204.5));
  CHECK(work.quantities.edge == in(211.5));
  CHECK(work.quantities.isolation == Length{});
  CHECK(work.quantities.ledger == Length{});  // a rim of 1/2 in takes screws
  // 209 in of edge 1 3/4 in high, and the soffits beyond the panel's rim.
  CHECK(in_square_feet(work.quantities.formed) * 144 ==
        Approx(209 * 1.75 + 78.25 * 26.25 - 77 * 25));
}

TEST_CASE("form strips round a rectangle add up by the closed formula", "[strips]") {
  // 2(L + 2t) + 2W for a 60 x 25 in form of 3/4 in stock: 173 in (elementary geometry).
  const Slab slab = slab_on(corners_of({{}, in(58), in(23)}), in(1), in(1.5));
  CHECK(work_for(slab, thick).quantities.edge == in(173));
}

TEST_CASE("an edge strip is as high as the slab edge and the soffit it is screwed to", "[strips]") {
  // Common practice, no source: 3/4 in strip and 1 1/2 in slab edge make 2 1/4 in.
  const Slab slab = slab_on(corners_of({{}, in(58), in(23)}), in(1), in(1.5));
  Forms forms = thick;
  forms.oversize = {};
  CHECK(part_at(work_for(slab, forms), "edge strip", "edge 1, edge 3").width == in(2.25));
}

TEST_CASE("a side flush with its base laps over the base", "[strips]") {
  Slab slab = potting_bench();
  slab.sides[2].overhang = slab.sides[2].panel_overhang = {};
  const FormWork work = work_for(slab, plain);
  CHECK(part_at(work, "edge strip", "back").width == in(1.875) + mm(50));
  CHECK(part_at(work, "soffit strip", "front").length == in(78.25));
  CHECK(part_at(work, "soffit strip", "right, left").length == in(24));
}

TEST_CASE("a ground slab has stakes and no soffits", "[strips]") {
  Slab slab = slab_on(corners_of({{}, mm(2400), mm(500)}), {}, mm(100));
  slab.support = Support::ground;
  const Forms forms = forms_with({{"b", "b", mm(3000), mm(150), mm(20), {}, {}}}, mm(3));
  const FormWork work = work_for(slab, forms);
  CHECK(part_at(work, "edge strip", "edge 1, edge 3").width == mm(100));
  CHECK(work.quantities.soffit == Length{});
  CHECK(work.quantities.ledger == Length{});
  // 20 mm of board bows 1 mm over 534 mm (see stiffness_test.cpp), so a stake every 500 mm.
  // 2440 mm: at 0, 500, 1000, 1500, 2000 and the end; 500 mm: one at each end.
  CHECK(work.quantities.stakes_apart == mm(500));
  CHECK(work.quantities.stakes == 2 * 6 + 2 * 2);
}

TEST_CASE("a wall has an isolation strip and takes nothing from its neighbours", "[strips]") {
  Slab slab = potting_bench();
  Side& back = slab.sides[2];
  back.wall = true;
  back.overhang = back.panel_overhang = {};
  const FormWork work = work_for(slab, plain);
  CHECK(work.quantities.isolation == in(78.25));
  CHECK(part_at(work, "edge strip", "front").length == in(79.5));
  CHECK(part_at(work, "edge strip", "right, left").length == in(25.125));
  CHECK(part_at(work, "soffit strip", "right, left").length == in(24));
  const Part& isolation = part_at(work, "isolation strip", "back");
  CHECK(std::count_if(work.parts.begin(), work.parts.end(),
                      [](const Part& p) { return p.place == "back"; }) == 1);
  CHECK(isolation.mark == "I1");
  CHECK(isolation.length == in(78.25));
  CHECK(isolation.width == in(1.75));
  CHECK(isolation.stock.empty());
}

TEST_CASE("an isolation strip is as high as the slab at its wall", "[strips]") {
  Slab slab = potting_bench();
  Side& back = slab.sides[2];
  back.wall = true;
  back.overhang = back.panel_overhang = {};
  // From the front edge, 1 1/8 in before the base, to its back at 24 in: 2 % of 25 1/8 in.
  slab.fall = Fall{0.02, 0};
  CHECK(part_at(work_for(slab, plain), "isolation strip", "back").width.in_mm() ==
        Approx((1.75 + 0.02 * 25.125) * 25.4));
  slab.fall = std::nullopt;
  // The base falls 6 mm to its right back corner, and goes on so for 1 1/8 in past its
  // 76 in.
  slab.levels = {{{in(0), in(0)}, mm(0)},
                 {{in(76), in(0)}, mm(0)},
                 {{in(76), in(24)}, mm(6)},
                 {{in(0), in(24)}, mm(0)}};
  CHECK(part_at(work_for(slab, plain), "isolation strip", "back").width.in_mm() ==
        Approx(1.75 * 25.4 + 6.0 * 77.125 / 76));
}

TEST_CASE("pinwheel strips pass where they end and equal sides pass by number", "[strips]") {
  Forms forms = plain;
  forms.corner = CornerStyle::pinwheel;
  const FormWork wheel = work_for(potting_bench(), forms);
  CHECK(part_at(wheel, "edge strip", "front, back").length == in(78.875));
  CHECK(part_at(wheel, "edge strip", "right, left").length == in(26.875));
  CHECK(part_at(wheel, "soffit strip", "front, back").length == in(77.125));

  // With a wall at the back the ends beside it are free, so the way round shows.
  Slab against_wall = potting_bench();
  against_wall.sides[2].wall = true;
  against_wall.sides[2].overhang = against_wall.sides[2].panel_overhang = {};
  const FormWork open = work_for(against_wall, forms);
  CHECK(part_at(open, "edge strip", "front").length == in(78.875));
  CHECK(part_at(open, "edge strip", "right").length == in(25.125));
  CHECK(part_at(open, "edge strip", "left").length == in(25.75));

  // A square with `through`: edge 1 passes at both ends, edge 4 at none.
  const Slab square = slab_on(corners_of({{}, in(30), in(30)}), in(1), in(1.5));
  const FormWork work = work_for(square, thick);
  CHECK(part_at(work, "edge strip", "edge 1").length == in(33.5));
  CHECK(part_at(work, "edge strip", "edge 2, edge 3").length == in(32.75));
  CHECK(part_at(work, "edge strip", "edge 4").length == in(32));
}

TEST_CASE("mitred strips run to the long point and soffits still butt", "[strips]") {
  Forms forms = thick;
  forms.corner = CornerStyle::mitre;
  const FormWork work = work_for(ell_slab(in(1)), forms);
  const Part& before = part_at(work, "edge strip", "edge 3");  // ends in the re-entrant corner
  CHECK(before.length == in(35 + 0.75));
  CHECK(before.left_cut_deg == 45);
  CHECK(before.right_cut_deg == -45);
  const Part& after = part_at(work, "edge strip", "edge 4");
  CHECK(after.left_cut_deg == -45);
  CHECK(after.right_cut_deg == 45);
  CHECK(part_at(work, "edge strip", "edge 1").length == in(62 + 1.5));
  CHECK(part_at(work, "edge strip", "edge 2").length == in(22 + 1.5));
  CHECK(part_at(work, "soffit strip", "edge 1").length == in(62));
  for (const Part& p : work.parts) {
    if (p.role == "soffit strip") CHECK((p.left_cut_deg == 0 && p.right_cut_deg == 0));
  }
}

TEST_CASE("a strip mitred at sharp corners is longer by the tangent of half each turn",
          "[strips]") {
  // Turns of 135 degrees at both ends of the long side: tan 67.5 = 1 + sqrt 2 (elementary
  // geometry).
  Slab slab = slab_on({{in(0), in(0)}, {in(60), in(0)}, {in(0), in(60)}}, {}, in(4));
  slab.support = Support::ground;
  Forms forms = thick;
  forms.corner = CornerStyle::mitre;
  const Part longest = part_at(work_for(slab, forms), "edge strip", "edge 2");
  const double root = std::sqrt(2.0);
  CHECK(longest.length.in_in() == Approx(60 * root + 2 * 0.75 * (1 + root)));
  CHECK(longest.left_cut_deg == Approx(67.5));
  CHECK(longest.right_cut_deg == Approx(67.5));
}

TEST_CASE("a strip that no board is wide enough for is listed whole", "[strips]") {
  const FormWork work = work_for(potting_bench(), forms_with({board(20, 0.5)}, in(0.125)));
  CHECK(part_at(work, "soffit strip", "front, back").length == in(78.25));
  CHECK(part_at(work, "edge strip", "front, back").length == in(79.5));
}

TEST_CASE("a wide overhang is a soffit panel and a wide rim needs no ledger", "[strips]") {
  Slab slab = potting_bench();
  for (Side& side : slab.sides) {
    side.overhang = mm(80);
    side.panel_overhang = mm(12);
  }
  const Forms forms = forms_with({board(108, 13.5)}, in(0.125));
  const FormWork work = work_for(slab, forms);
  CHECK(work.parts.front().role == "soffit panel");
  CHECK(work.quantities.ledger == Length{});
  slab.sides[0].overhang = mm(75);
  slab.sides[0].panel_overhang = mm(11);
  const FormWork narrow = work_for(slab, forms);
  CHECK(narrow.parts.front().role == "soffit strip");
  CHECK(narrow.quantities.ledger == narrow.parts.front().length);
}

TEST_CASE("knock-outs stand inside the opening and are never oversize", "[strips]") {
  Slab slab = potting_bench();
  slab.openings.push_back({"sink", {{in(20), in(6)}, in(18), in(14)}, true});
  FormWork work = work_for(slab, plain);
  std::vector<Row> knock_outs = rows(work);
  knock_outs.erase(knock_outs.begin(), knock_outs.begin() + 4);
  CHECK(knock_outs == std::vector<Row>{{"K1", "knock-out strip", 1.75, 18, 2, "sink"},
                                       {"K2", "knock-out strip", 1.75, 12.75, 2, "sink"}});
  CHECK(work.quantities.knock_out == in(61.5));
  CHECK(work.quantities.ledger == in(36));
  // 64 in round the opening, 1 5/16 in high above the panel.
  const Area more = work.quantities.formed - work_for(potting_bench(), plain).quantities.formed;
  CHECK(in_square_feet(more) * 144 == Approx(64 * 1.3125));

  slab.openings.front().through = false;
  work = work_for(slab, plain);
  CHECK(work.parts[4].width == in(1.3125));
  CHECK(work.quantities.ledger == Length{});

  slab.openings.front().at.length = in(1.25);
  work = work_for(slab, plain);
  CHECK(rows(work).back() == Row{"K1", "knock-out block", 1.25, 14, 1, "sink"});
  CHECK(work.parts.back().stock.empty());
  CHECK(work.quantities.knock_out == Length{});
}

TEST_CASE("strips longer than every board are spliced apart with a cleat at each joint",
          "[strips]") {
  const Slab slab = slab_on(corners_of({{}, in(198), in(40)}), in(1), in(1.5));
  const FormWork work = work_for(slab, thick);
  // Edge 201 1/2 in: 96 + 93.69 + 300 mm. Soffit 200 in: 96 + 92.19 + 300 mm from the other end.
  std::vector<Row> edges, cleats;
  for (const Row& row : rows(work)) {
    if (row.role == "edge strip" && row.width_in == 2.5 && row.quantity == 2) edges.push_back(row);
    if (row.role == "cleat") cleats.push_back(row);
  }
  REQUIRE(edges.size() >= 3);
  CHECK(edges[0].place ==
        "edge 1 (piece 1 of 3 from the left), edge 3 (piece 1 of 3 from the left)");
  CHECK(edges[0].length_in == 96);
  CHECK(edges[1].length_in == Approx(201.5 - 96 - 300 / 25.4));
  CHECK(edges[2].length_in == Approx(300 / 25.4));
  REQUIRE(cleats.size() == 2);
  CHECK((cleats[0].width_in == 1 && cleats[0].quantity == 4));
  CHECK((cleats[1].width_in == 2.5 && cleats[1].quantity == 4));
  CHECK(cleats[1].place == "edge 1, edge 3");
}

TEST_CASE("end trim shortens the longest strip and a board too narrow carries none", "[strips]") {
  const Slab slab = slab_on(corners_of({{}, in(94), in(40)}), in(1), in(1.5));
  Forms forms = thick;  // edge 97 1/2 in
  forms.strip_stock.push_back({"long", "long", in(120), in(2), in(0.75), {}, {}});
  CHECK(part_at(work_for(slab, forms), "soffit strip", "edge 1, edge 3").length == in(96));
  CHECK(work_for(slab, forms).parts.back().role == "cleat");
  forms.strip_stock.back().width = in(4);
  CHECK(work_for(slab, forms).parts.back().role == "edge strip");
  forms.end_trim = in(11.5);
  CHECK(work_for(slab, forms).parts.back().role == "cleat");
}

TEST_CASE("steps smaller than the overhang still get soffits that fill it", "[strips]") {
  Polygon base{{mm(0), mm(0)},    {mm(500), mm(0)},   {mm(500), mm(10)},
               {mm(900), mm(10)}, {mm(900), mm(400)}, {mm(0), mm(400)}};
  // Whichever side is the first.
  for (std::size_t first = 0; first < base.size(); ++first) {
    CAPTURE(first);
    std::rotate(base.begin(), base.begin() + 1, base.end());
    const Slab slab = slab_on(base, mm(30), mm(40));
    const SlabPlan shape = measure_slab(slab);
    Area soffits;
    for (const Part& p : work_for(slab, plain).parts) {
      if (p.role != "soffit strip") continue;
      CHECK(p.length > Length{});
      soffits += p.length * p.width * p.quantity;
    }
    CHECK(soffits.si() == Approx((shape.area - signed_area(slab.base)).si()));
  }
}

TEST_CASE("battens are listed piece by piece and add up", "[strips]") {
  // A rim of 1/4 in gives screws nothing to bite into: all soffits stand on a ledger.
  Slab slab = potting_bench();
  for (Side& side : slab.sides) side.panel_overhang = in(0.25);
  const FormQuantities quantities = work_for(slab, plain).quantities;
  CHECK(quantities.ledger == in(204.5));
  CHECK(quantities.ledger_pieces == std::vector<Length>{in(78.25), in(24), in(78.25), in(24)});
}

TEST_CASE("a recess too narrow for the strips of its sides is never silent", "[strips]") {
  // A notch in the back of a U, `wide` between its sides, 20 in deep; strips of 3/4 in.
  const auto notched = [](Length wide) {
    return slab_on({{in(0), in(0)},
                    {in(60), in(0)},
                    {in(60), in(40)},
                    {in(30) + wide, in(40)},
                    {in(30) + wide, in(20)},
                    {in(30), in(20)},
                    {in(30), in(40)},
                    {in(0), in(40)}},
                   {}, in(1.5));
  };
  for (const CornerStyle style :
       {CornerStyle::through, CornerStyle::pinwheel, CornerStyle::mitre}) {
    Forms forms = thick;
    forms.corner = style;
    const FormWork narrow = work_for(notched(in(1.25)), forms);
    const Part& part = part_at(narrow, "edge strip", "edge 5 (a recess too narrow for its strips)");
    CHECK(part.stock.empty());
    CHECK(part.length == in(1.25));
    const FormWork wide = work_for(notched(in(4)), forms);
    CHECK(std::none_of(wide.parts.begin(), wide.parts.end(),
                       [](const Part& p) { return p.stock.empty(); }));
  }
}
