// SPDX-License-Identifier: MIT
#include "slab/panels.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <set>

#include "core/shelves.h"
#include "slab/measure.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

PanelLayout layout_of(const Slab& slab) {
  MarkCounter marks;
  return lay_panels(slab, measure_slab(slab), in(0.125), marks);
}

Slab panelled(const Polygon& base, Length gap) {
  Slab slab = slab_on(base, {}, mm(40));
  add_panel(slab, {}, mm(12));
  slab.panel_gap = gap;
  return slab;
}

Area covered(const PanelLayout& layout) {
  Area sum;
  for (const PanelPiece& piece : layout.pieces) sum += area(piece.at);
  return sum;
}

bool any_overlap(const std::vector<PanelPiece>& pieces, Length gap) {
  for (std::size_t i = 0; i < pieces.size(); ++i) {
    Rectangle wide = pieces[i].at;  // with the gap it needs on the right and above
    wide.length += gap;
    wide.depth += gap;
    for (std::size_t j = 0; j < pieces.size(); ++j) {
      if (i != j && overlaps(wide, pieces[j].at) && overlaps(pieces[i].at, pieces[j].at)) {
        return true;
      }
    }
  }
  return false;
}

std::size_t sheets_for(const PanelLayout& layout) {
  std::vector<SheetItem> items;
  for (const Part& part : layout.parts) items.push_back({part.length, part.width, part.quantity});
  return pack_on_shelves(items, {{in(60), in(36), {}}}, in(0.125)).sheets.size();
}

/// True when four pieces meet in a point (checked with no gap between them).
bool four_meet(const std::vector<PanelPiece>& pieces) {
  std::map<std::pair<Length, Length>, int> corners;
  for (const PanelPiece& piece : pieces) {
    for (const Point& p : corners_of(piece.at)) {
      if (++corners[{p.x, p.y}] == 4) return true;
    }
  }
  return false;
}

}  // namespace

TEST_CASE("a deck of 96 by 25 1/2 in takes two sheets of 60 by 36 in", "[panels]") {
  // Whole-sheet lower bound ceil(area/sheet area) is 2 (elementary geometry).
  Slab slab = panelled(corners_of({{}, in(96), in(25.5)}), {});
  const PanelLayout layout = layout_of(slab);
  REQUIRE(layout.parts.size() == 2);
  CHECK(layout.parts[0].mark == "P1");
  CHECK(layout.parts[0].role == "backer panel");
  CHECK(layout.parts[0].stock == "panel");
  CHECK(layout.pieces.size() == 2);
  CHECK(layout.seams == in(25.5));
}

TEST_CASE("a slab without a panel has an empty layout", "[panels]") {
  const PanelLayout layout = layout_of(slab_on(corners_of({{}, in(96), in(26)}), {}, in(2)));
  CHECK(layout.pieces.empty());
  CHECK(layout.parts.empty());
}

TEST_CASE("rows are staggered and no piece is a sliver", "[panels]") {
  // 121 in is two sheets and 1 in; 73 in is two rows and 1 in.
  const PanelLayout layout = layout_of(panelled(corners_of({{}, in(121), in(73)}), {}));
  CHECK_FALSE(four_meet(layout.pieces));
  for (const PanelPiece& piece : layout.pieces) {
    CHECK(std::min(piece.at.length, piece.at.depth) >= mm(75));
  }
  CHECK(covered(layout).si() == Approx((in(121) * in(73)).si()));
  // Where the second piece would be 1 in, the two share equally.
  const PanelLayout two = layout_of(panelled(corners_of({{}, in(61), in(36)}), {}));
  REQUIRE(two.pieces.size() == 2);
  CHECK(two.pieces[0].at.length == two.pieces[1].at.length);
}

TEST_CASE("rows run up an L where that makes less seam", "[panels]") {
  // Upright: a sheet of 60 x 36 in and a foot of 24 x 12 in that meet along 12 in; cut straight
  // across they would meet along 36 in.
  const Polygon ell{{in(0), in(0)},   {in(60), in(0)},  {in(60), in(12)},
                    {in(36), in(12)}, {in(36), in(60)}, {in(0), in(60)}};
  const PanelLayout layout = layout_of(panelled(ell, {}));
  CHECK(layout.seams == in(12));
  for (const PanelPiece& piece : layout.pieces) CHECK(contains(ell, piece.at));
}

TEST_CASE("each through opening takes its share of the seams it crosses", "[panels]") {
  Slab slab = panelled(corners_of({{}, in(180), in(36)}), {});
  slab.openings.push_back({"left", {{in(55), in(10)}, in(12), in(10)}, true});
  CHECK(layout_of(slab).seams == in(62));
  slab.openings.push_back({"right", {{in(115), in(20)}, in(12), in(9)}, true});
  CHECK(layout_of(slab).seams == in(53));
}

TEST_CASE("a piece wholly inside a through opening is left out and its seams too", "[panels]") {
  Slab slab = panelled(corners_of({{}, in(180), in(36)}), {});
  const PanelLayout whole = layout_of(slab);
  CHECK(whole.pieces.size() == 3);
  CHECK(whole.seams == in(72));
  slab.openings.push_back({"well", {{in(58), in(0)}, in(64), in(36)}, true});
  const PanelLayout cut = layout_of(slab);
  REQUIRE(cut.pieces.size() == 2);
  CHECK(cut.pieces[0].at.at.x == in(0));
  CHECK(cut.pieces[1].at.at.x == in(120));
  CHECK(cut.seams == Length{});
  slab.openings.front().through = false;
  CHECK(layout_of(slab).pieces.size() == 3);
}

TEST_CASE("panels of any outline cover the panel area once", "[panels]") {
  Draw draw(5);
  for (int round = 0; round < 300; ++round) {
    CAPTURE(round);
    const Polygon base = random_outline(draw, mm(310));
    const PanelLayout layout = layout_of(panelled(base, {}));
    CHECK(covered(layout).si() == Approx(signed_area(base).si()));
    CHECK_FALSE(any_overlap(layout.pieces, {}));
    CHECK_FALSE(four_meet(layout.pieces));
    int parts = 0;
    for (const Part& part : layout.parts) parts += part.quantity;
    CHECK(parts == static_cast<int>(layout.pieces.size()));
    for (const PanelPiece& piece : layout.pieces) CHECK(contains(base, piece.at));
  }
}

TEST_CASE("panels leave a gap between neighbours and lose no other area", "[panels]") {
  Draw draw(6);
  for (int round = 0; round < 200; ++round) {
    CAPTURE(round);
    const Polygon base = random_outline(draw, mm(310));
    const Length gap = mm(3);
    const PanelLayout layout = layout_of(panelled(base, gap));
    for (std::size_t i = 0; i < layout.pieces.size(); ++i) {
      CHECK(contains(base, layout.pieces[i].at));
      Rectangle around = layout.pieces[i].at;
      around.at.x -= gap;
      around.at.y -= gap;
      around.length += gap * 2;
      around.depth += gap * 2;
      for (std::size_t j = i + 1; j < layout.pieces.size(); ++j) {
        const Rectangle& other = layout.pieces[j].at;
        if (overlaps(around, other)) {
          // Only pieces that meet at a re-entrant corner of the outline may be nearer.
          CAPTURE(i, j);
          CHECK(overlaps(around, other) == false);
        }
      }
    }
    // What is not covered is the seams, and at most a gap's width of rim where steps meet.
    const double open = (signed_area(base) - covered(layout)).si();
    CHECK(open <= ((layout.seams + perimeter(base)) * gap).si() + 1e-9);
    CHECK(open >= 0);
  }
}

TEST_CASE("moving a slab moves its panels and changes nothing else", "[panels]") {
  Draw draw(7);
  for (int round = 0; round < 50; ++round) {
    Polygon base = random_outline(draw, mm(310));
    const PanelLayout here = layout_of(panelled(base, mm(3)));
    for (Point& p : base) p = {p.x + mm(1234), p.y - mm(777)};
    const PanelLayout there = layout_of(panelled(base, mm(3)));
    REQUIRE(here.pieces.size() == there.pieces.size());
    CHECK(here.seams == there.seams);
    for (std::size_t i = 0; i < here.pieces.size(); ++i) {
      CHECK(there.pieces[i].mark == here.pieces[i].mark);
      Rectangle moved = here.pieces[i].at;
      moved.at = {moved.at.x + mm(1234), moved.at.y - mm(777)};
      CHECK(there.pieces[i].at == moved);
    }
  }
}

TEST_CASE("a staircase of a thousand corners is laid quickly", "[panels]") {
  Polygon base{{}};
  for (int i = 0; i < 499; ++i) {
    base.push_back({mm(100 * (i + 1)), mm(50 * i)});
    base.push_back({mm(100 * (i + 1)), mm(50 * (i + 1))});
  }
  base.push_back({mm(0), base.back().y});
  REQUIRE(base.size() == 1000);
  const PanelLayout layout = layout_of(panelled(base, {}));
  CHECK(covered(layout).si() == Approx(signed_area(base).si()));
}

TEST_CASE("a piece that an opening cuts says where and is a part of its own", "[panels]") {
  Slab slab = panelled(corners_of({{}, in(120), in(36)}), {});
  slab.openings.push_back({"sink", {{in(50), in(3)}, in(30), in(16)}, true});
  const PanelLayout layout = layout_of(slab);
  REQUIRE(layout.pieces.size() == 2);
  CHECK(layout.parts.size() == 2);  // both 60 x 36 in, cut differently
  CHECK(layout.pieces[0].mark != layout.pieces[1].mark);
  CHECK(layout.pieces[0].cuts == std::vector<Rectangle>{{{in(50), in(3)}, in(10), in(16)}});
  CHECK(layout.pieces[1].cuts == std::vector<Rectangle>{{{in(0), in(3)}, in(20), in(16)}});
  slab.openings.front().through = false;
  const PanelLayout whole = layout_of(slab);
  CHECK(whole.parts.size() == 1);
  CHECK(whole.pieces[0].cuts.empty());
}

TEST_CASE("a sliver shares its row equally where that takes no more sheets", "[panels]") {
  const PanelLayout layout = layout_of(panelled(corners_of({{}, in(61), in(36)}), {}));
  REQUIRE(layout.pieces.size() == 2);
  CHECK(layout.pieces[0].at.length == in(30.5));
  CHECK(layout.pieces[1].at.length == in(30.5));
}

TEST_CASE("a trapezoid is laid as the rectangle around it and cut to the line", "[panels]") {
  // 120 x 36 in with the left 12 in of the back cut away: two sheets of 60 x 36 in, one cut.
  const Polygon base{{in(0), in(0)}, {in(120), in(0)}, {in(120), in(36)}, {in(12), in(36)}};
  const PanelLayout layout = layout_of(panelled(base, {}));
  REQUIRE(layout.pieces.size() == 2);
  CHECK(layout.parts.size() == 2);
  CHECK(layout.seams == in(36));
  CHECK(layout.pieces[0].at == Rectangle{{in(0), in(0)}, in(60), in(36)});
  CHECK(layout.pieces[1].outline.empty());
  REQUIRE(layout.pieces[0].outline.size() == 4);
  // (60 + 48)/2 x 36 in
  CHECK(signed_area(layout.pieces[0].outline).si() == Approx((in(54) * in(36)).si()));
}

TEST_CASE("a base out of square takes as many sheets as the square one", "[panels]") {
  const Polygon base{{mm(0), mm(0)}, {in(76), mm(2)}, {in(76) + mm(3), in(24)}, {mm(1), in(24)}};
  const PanelLayout layout = layout_of(panelled(base, in(0.125)));
  CHECK(layout.pieces.size() ==
        layout_of(panelled(corners_of({{}, in(76), in(24)}), in(0.125))).pieces.size());
}

TEST_CASE("an L out by millimetres takes as many pieces and sheets as the square L", "[panels]") {
  // Sheets of 1524 x 914 mm (60 x 36 in), gaps of 3 mm. The foot of 3000 x 600 mm is 1524 + 3 +
  // 1473 mm, the leg of 600 x 1500 mm over a gap is 3 + 914 + 3 + 580 mm. Each piece of the foot
  // takes a sheet, both of the leg share one: 914 + 3.2 + 580 < 1524 mm. The rectangle around the
  // L, cut to the line, would be 5 pieces. Seams: 600 mm in the foot, between foot and leg, and in
  // the leg.
  const Polygon square{{mm(0), mm(0)},     {mm(3000), mm(0)},   {mm(3000), mm(600)},
                       {mm(600), mm(600)}, {mm(600), mm(2100)}, {mm(0), mm(2100)}};
  const Polygon measured{{mm(0), mm(0)},     {mm(3000), mm(-3)},  {mm(3004), mm(603)},
                         {mm(602), mm(600)}, {mm(600), mm(2098)}, {mm(2), mm(2100)}};
  const PanelLayout exact = layout_of(panelled(square, mm(3)));
  const PanelLayout layout = layout_of(panelled(measured, mm(3)));
  CHECK(exact.pieces.size() == 4);
  CHECK(layout.pieces.size() == 4);
  CHECK(sheets_for(exact) == 3);
  CHECK(sheets_for(layout) == 3);
  // The line takes millimetres off the ends of the seams, or adds them.
  CHECK(exact.seams == mm(1800));
  CHECK(layout.seams.in_mm() == Approx(1800).margin(15));
}

TEST_CASE("panels under a rounded or cut corner agree with what they displace", "[panels]") {
  // Sharp corner of the slab 25 mm out either way of the panel's. The panel's corner stays inside
  // a radius r while (r - 25) sqrt 2 <= r, so r <= 85.36 mm; and a straight cut c while c <= 50 mm.
  Slab slab = panelled(corners_of({{}, mm(2000), mm(700)}), {});
  for (Side& side : slab.sides) side.overhang = mm(25);
  for (const CornerCut& cut : {CornerCut{0, mm(85), true}, CornerCut{1, mm(50), false}}) {
    slab.corner_cuts.push_back(cut);
    const SlabPlan shape = measure_slab(slab);
    const double covered_by_pieces = covered(layout_of(slab)).si();
    CHECK(covered_by_pieces == Approx(2.0 * 0.7));
    CHECK(cut_panel_area(slab, shape).si() == Approx(covered_by_pieces));
    CHECK(shape.panel_displacement.si() / 0.012 == Approx(covered_by_pieces));
  }
  // One that cut into the panel, which no job may ask for, would displace less than is laid.
  slab.corner_cuts = {{0, mm(120), true}};
  CHECK(measure_slab(slab).panel_displacement.si() / 0.012 < 2.0 * 0.7 - 1e-6);
}

TEST_CASE("pieces cut to the line cover any star-shaped area once", "[panels]") {
  Draw draw(8);
  for (int round = 0; round < 200; ++round) {
    CAPTURE(round);
    const int corners = draw.whole(3, 12);
    Polygon base;
    for (int k = 0; k < corners; ++k) {
      const double turn = 2 * 3.141592653589793 * k / corners, far = draw.whole(300, 3000);
      base.push_back({mm(far * std::cos(turn)), mm(far * std::sin(turn))});
    }
    const PanelLayout layout = layout_of(panelled(base, {}));
    Area sum;
    for (const PanelPiece& piece : layout.pieces) {
      const Polygon outline = piece.outline.empty() ? corners_of(piece.at) : piece.outline;
      sum += signed_area(outline);
      CHECK_FALSE(self_contact(outline));
      CHECK(std::max(piece.at.length, piece.at.depth) <= in(60));
      CHECK(std::min(piece.at.length, piece.at.depth) <= in(36));
    }
    // Up to 1 mm2 may be left out in each of a few tips.
    CHECK(sum.si() == Approx(signed_area(base).si()).margin(2e-5));
  }
}

TEST_CASE("a layout that spares a sink wins among those of as many sheets", "[panels]") {
  // 90 in is 45 + 45 in or 60 + 30 in: only the second joint lies clear of a sink at 35 to 50 in.
  Slab slab = panelled(corners_of({{}, in(90), in(24)}), {});
  CHECK(layout_of(slab).pieces.size() == 2);
  slab.openings.push_back({"sink", {{in(35), in(5)}, in(15), in(15)}, true});
  const PanelLayout layout = layout_of(slab);
  REQUIRE(layout.pieces.size() == 2);
  for (const PanelPiece& piece : layout.pieces) {
    const Length left = piece.at.at.x;
    CHECK((left == in(0) || left >= in(50) + mm(75)));
  }
}

TEST_CASE("a joint goes over a partition where that takes no more sheets", "[panels]") {
  // 84 x 30 in from sheets of 60 x 36 in: two sheets whatever the joint, so it moves from 60 in to
  // the partition at 50 in; with none in reach the full sheet stays.
  Slab slab = panelled(corners_of({{}, in(84), in(30)}), in(0.125));
  slab.partitions = {{{in(50), in(0)}, {in(50), in(30)}}};
  const PanelLayout layout = layout_of(slab);
  REQUIRE(layout.pieces.size() == 2);
  const Length left = std::min(layout.pieces[0].at.length, layout.pieces[1].at.length);
  const Length right = std::max(layout.pieces[0].at.length, layout.pieces[1].at.length);
  CHECK(left + right + slab.panel_gap == in(84));
  CHECK(right.in_in() == Approx(50).margin(0.1));
  CHECK(layout.unsupported == Length{});
  slab.partitions = {{{in(10), in(0)}, {in(10), in(30)}}};
  CHECK(layout_of(slab).unsupported >= in(30));
}

TEST_CASE("a joint keeps clear of an opening though a full sheet would end in it", "[panels]") {
  Slab slab = panelled(corners_of({{}, in(84), in(30)}), in(0.125));
  slab.openings.push_back({"well", {{in(55), in(6)}, in(10), in(10)}, true});
  const PanelLayout layout = layout_of(slab);
  CHECK(layout.in_openings == Length{});
  for (const PanelPiece& piece : layout.pieces) {
    const Length end = piece.at.at.x + piece.at.length;
    const bool clear = end <= in(55) - mm(74) || end >= in(65) + mm(74);
    CHECK(clear);
  }
}

TEST_CASE("a piece within the box of a round opening but not within its circle stays", "[panels]") {
  // Panels of 10 x 10 in under a circle of 60 in: those at the corners of its box keep a corner.
  Slab slab = panelled(corners_of({{}, in(90), in(70)}), {});
  slab.panel->length = slab.panel->width = in(10);
  slab.openings.push_back({"pool", {{in(15), in(5)}, in(60), in(60)}, true, in(30)});
  const std::size_t round = layout_of(slab).pieces.size();
  slab.openings.front().corner_radius = {};
  CHECK(round > layout_of(slab).pieces.size());
}
