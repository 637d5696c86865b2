// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <map>
#include <tuple>

#include "core/outlines.h"
#include "slab/footprints.h"
#include "slab/measure.h"
#include "slab/strips.h"
#include "support/geos.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

constexpr Length s = Length::mm(18);
const CornerStyle styles[] = {CornerStyle::through, CornerStyle::pinwheel, CornerStyle::mitre};

/// Random outline, overhangs (some 0) and walls.
Slab random_slab(Draw& draw) {
  Slab slab = slab_on(random_outline(draw, mm(200)), {}, mm(draw.whole(30, 60)));
  const bool walls = draw.one_in(2);
  for (Side& side : slab.sides) {
    side.wall = walls && draw.one_in(4);
    if (!side.wall && !draw.one_in(5)) side.overhang = mm(draw.whole(10, 90));
  }
  return slab;
}

Forms long_boards(CornerStyle style) {
  Forms forms = forms_with({{"b", "b", mm(20000), mm(500), s, {}, {}}}, mm(3));
  forms.corner = style;
  return forms;
}

/// Slanted outlines: corners of a random right-angled one moved about, or a star round a point.
/// No corner is almost square, where butted strips leave a wedge that no saw follows.
Slab random_slanted(Draw& draw) {
  for (;;) {
    Polygon base;
    if (draw.one_in(2)) {
      base = random_outline(draw, mm(300));
      for (Point& p : base) {
        if (draw.one_in(2)) p = {p.x + mm(draw.whole(-70, 70)), p.y + mm(draw.whole(-70, 70))};
      }
    } else {
      const int corners = draw.whole(3, 9);
      for (int i = 0; i < corners; ++i) {
        const double angle = 6.2831853 * (i + draw.whole(-30, 30) / 100.0) / corners;
        const Length r = mm(draw.whole(500, 1500));
        base.push_back({r * std::cos(angle), r * std::sin(angle)});
      }
    }
    Slab slab = slab_on(base, {}, mm(40));
    for (Side& side : slab.sides) {
      side.wall = draw.one_in(6);
      if (!side.wall && !draw.one_in(5)) side.overhang = mm(draw.whole(10, 60));
    }
    bool usable = !self_contact(base) && signed_area(base) > Area{};
    if (!usable) continue;
    const Polygon outline = sharp_outline(slab);
    usable = !self_contact(outline) && !swallowed_edge(base, outline) &&
             GeosRegion(base).without(GeosRegion(outline)).area() < Area::from_si(1e-9);
    for (std::size_t k = 0; k < base.size(); ++k) {
      const double turn = std::abs(turn_at(base, k).radians) * 180 / 3.14159265358979;
      const bool exact = turn_at(base, k).tan_half * turn_at(base, k).tan_half == 1;
      if (turn < 5 || turn > 150 || (!exact && turn > 87.9 && turn < 92.1)) usable = false;
    }
    if (usable) return slab;
  }
}

/// What soffits stand over where an end is skew by so little that the saw is left square.
Area square_cut(const Slab& slab, const std::vector<StripEnds>& ends) {
  Area sum;
  for (std::size_t k = 0; k < ends.size(); ++k) {
    const Length width = slab.sides[k].overhang;
    if (width <= Length{}) continue;
    for (const StripEnd& end : {ends[k].left, ends[k].right}) {
      const Length skew = end.longest() * 2 - end.inner - end.outer;  // outer less inner, positive
      if (end.cut_deg(width) == 0) sum += skew * width / 2;
    }
  }
  return sum;
}

/// A wall within 30 degrees of its neighbour's line: the strip there is scribed by hand.
bool has_shallow_wall(const Slab& slab, const Polygon& outline) {
  for (std::size_t k = 0; k < outline.size(); ++k) {
    const bool wall =
        slab.sides[k].wall || slab.sides[(k + outline.size() - 1) % outline.size()].wall;
    if (wall && std::abs(std::sin(turn_at(outline, k).radians)) < 0.5) return true;
  }
  return false;
}

/// The polygons of a list that are not empty.
std::vector<Polygon> present(const std::vector<Polygon>& prints) {
  std::vector<Polygon> kept;
  for (const Polygon& print : prints) {
    if (!print.empty()) kept.push_back(print);
  }
  return kept;
}

/// GEOS, whose coordinates are plain doubles, loses whole polygons now and then where edges almost
/// coincide: 1 um off each side of a strip keeps them apart.
GeosRegion inside_of(const Polygon& strip) {
  return GeosRegion(strip).grown_mitred(mm(-0.001));
}

Area sum_of(const std::vector<Polygon>& prints) {
  Area sum;
  for (const Polygon& print : prints) sum += signed_area(print);
  return sum;
}

/// Parts without their marks and places; the angles of one part in rising order.
std::map<std::tuple<std::string, Length, Length, double, double>, int> kinds_of(
    const std::vector<Part>& parts) {
  std::map<std::tuple<std::string, Length, Length, double, double>, int> kinds;
  for (const Part& p : parts) {
    const auto [low, high] = std::minmax(p.left_cut_deg, p.right_cut_deg);
    kinds[{p.role, p.width, p.length, low, high}] += p.quantity;
  }
  return kinds;
}

FormWork work_for(const Slab& slab, CornerStyle style) {
  MarkCounter marks;
  return form_work(slab, measure_slab(slab), long_boards(style), kilograms_per_m3(2300), marks);
}

}  // namespace

TEST_CASE("soffits fill the overhang exactly whatever the outline", "[properties][strips]") {
  Draw draw(1);
  for (int round = 0; round < 1000; ++round) {
    const Slab slab = random_slab(draw);
    const SlabPlan shape = measure_slab(slab);
    REQUIRE_FALSE(swallowed_edge(slab.base, shape.outline));
    for (const CornerStyle style : styles) {
      CAPTURE(round, static_cast<int>(style));
      Area parts;
      for (const Part& p : work_for(slab, style).parts) {
        if (p.role.starts_with("soffit")) parts += p.length * p.width * p.quantity;
      }
      CHECK(parts.si() == Approx((shape.area - signed_area(slab.base)).si()).margin(1e-12));

      const auto ends = soffit_ends(slab, shape.outline, style);
      const auto soffits = present(soffit_footprints(slab, shape.outline, ends));
      CHECK(sum_of(soffits).si() == Approx(parts.si()).margin(1e-12));
      CHECK(geos_union_area(soffits).si() == Approx(parts.si()).margin(1e-9));
    }
  }
}

TEST_CASE("soffits of slanted outlines fill the overhang and never overlap",
          "[properties][strips]") {
  Draw draw(11);
  for (int round = 0; round < 400; ++round) {
    const Slab slab = random_slanted(draw);
    const Polygon outline = sharp_outline(slab);
    // Pieces that neither overlap nor leave the overhang, and add up to it, fill it.
    const Area overhang = signed_area(outline) - signed_area(slab.base);
    for (const CornerStyle style : styles) {
      CAPTURE(round, static_cast<int>(style));
      const auto ends = soffit_ends(slab, outline, style);
      const auto soffits = present(soffit_footprints(slab, outline, ends));
      CHECK(sum_of(soffits).si() == Approx(overhang.si()).margin(1e-9));
      CHECK(geos_union_area(soffits).si() == Approx(overhang.si()).margin(1e-9));
      for (const Polygon& soffit : soffits) {
        CHECK_FALSE(inside_of(soffit).overlaps(GeosRegion(slab.base)));
        CHECK(GeosRegion(outline).covers(inside_of(soffit)));
      }

      // From the parts alone: a trapezoid as long as its long point says, less half the skew.
      Area parts;
      for (const Part& p : work_for(slab, style).parts) {
        if (!p.role.starts_with("soffit")) continue;
        const double pi = std::acos(-1.0);
        const double skew = std::abs(std::tan(p.left_cut_deg * pi / 180)) +
                            std::abs(std::tan(p.right_cut_deg * pi / 180));
        parts += (p.length - p.width * skew / 2) * p.width * p.quantity;
      }
      CHECK(parts.si() == Approx((overhang + square_cut(slab, ends)).si()).margin(1e-9));
    }
  }
}

TEST_CASE("edge strips of slanted outlines close the edge and never overlap",
          "[properties][strips]") {
  Draw draw(12);
  int tried = 0;
  for (int round = 0; round < 450; ++round) {
    const Slab slab = random_slanted(draw);
    const Polygon outline = sharp_outline(slab);
    for (const CornerStyle style : styles) {
      CAPTURE(round, static_cast<int>(style));
      const Forms forms = long_boards(style);
      const auto faces = form_faces(slab, outline, forms);
      const auto ends = edge_ends(slab, faces, forms);
      if (has_shallow_wall(slab, outline)) continue;
      if (!faces_without_room(faces, ends, s).empty()) continue;
      ++tried;
      const auto edges = present(edge_footprints(faces, ends, s));
      const GeosRegion strips = GeosRegion::union_of(edges);
      CHECK(strips.area().si() == Approx(sum_of(edges).si()).margin(1e-8));
      // The band of strip thickness outside formed sides: up to the outline grown by it, with the
      // sides at walls left where they are.
      std::vector<Length> out;
      for (const Side& side : slab.sides) out.push_back(side.wall ? Length{} : s);
      const Polygon grown = offset_edges(outline, out);
      for (const Polygon& edge : edges) {
        CHECK_FALSE(inside_of(edge).overlaps(GeosRegion(outline)));
        CHECK(GeosRegion(grown).covers(inside_of(edge)));
      }
      CHECK(sum_of(edges).si() ==
            Approx((signed_area(grown) - signed_area(outline)).si()).margin(1e-9));
    }
  }
  CHECK(tried > 900);
}

TEST_CASE("butted edge strips add up to the formed perimeter and the corners",
          "[properties][strips]") {
  Draw draw(2);
  int tried = 0;
  for (int round = 0; round < 1000; ++round) {
    const Slab slab = random_slab(draw);
    const SlabPlan shape = measure_slab(slab);
    Length expected;
    const std::size_t n = slab.sides.size();
    // A recess without room for the strips of both its sides cannot be formed at all.
    bool room = true;
    for (std::size_t k = 0; k < n; ++k) room = room && edge_length(shape.outline, k) >= s * 2;
    if (!room) continue;
    ++tried;
    for (std::size_t k = 0; k < n; ++k) {
      if (!slab.sides[k].wall) expected += edge_length(shape.outline, k);
      if (slab.sides[k].wall || slab.sides[(k + n - 1) % n].wall) continue;
      expected += is_convex_corner(slab.base, k) ? s : -s;
    }
    for (const CornerStyle style : {CornerStyle::through, CornerStyle::pinwheel}) {
      CAPTURE(round, static_cast<int>(style));
      CHECK(work_for(slab, style).quantities.edge == expected);
      const Forms forms = long_boards(style);
      const auto faces = form_faces(slab, shape.outline, forms);
      const auto edges = present(edge_footprints(faces, edge_ends(slab, faces, forms), s));
      CHECK(geos_union_area(edges).si() == Approx(sum_of(edges).si()).margin(1e-9));
      for (const Polygon& edge : edges) {
        CHECK(geos_common_area(edge, shape.outline).si() == Approx(0).margin(1e-9));
      }
    }
  }
  CHECK(tried > 900);
}

TEST_CASE("mitred edge strips add one thickness at each convex end", "[properties][strips]") {
  Draw draw(3);
  for (int round = 0; round < 300; ++round) {
    const Slab slab = random_slab(draw);
    const SlabPlan shape = measure_slab(slab);
    const Forms forms = long_boards(CornerStyle::mitre);
    const auto ends = edge_ends(slab, form_faces(slab, shape.outline, forms), forms);
    const std::size_t n = slab.sides.size();
    for (std::size_t k = 0; k < n; ++k) {
      const std::size_t before = (k + n - 1) % n;
      if (slab.sides[k].wall || slab.sides[before].wall) {
        CHECK((slab.sides[k].wall || ends[k].left.cut_deg(s) == 0));
        continue;
      }
      const bool convex = is_convex_corner(slab.base, k);
      CHECK(ends[k].left.longest() == (convex ? s : Length{}));
      CHECK(ends[before].right.longest() == ends[k].left.longest());
      CHECK(ends[k].left.cut_deg(s) == (convex ? 45 : -45));
      CHECK(ends[before].right.cut_deg(s) == ends[k].left.cut_deg(s));
    }
  }
}

TEST_CASE("moving a slab changes no part of it", "[properties][strips]") {
  Draw draw(4);
  for (int round = 0; round < 300; ++round) {
    const Slab slab = random_slab(draw);
    Slab moved = slab;
    for (Point& p : moved.base) p = {p.x + mm(12345), p.y - mm(54321)};
    for (const CornerStyle style : styles) {
      const FormWork here = work_for(slab, style), there = work_for(moved, style);
      CHECK(kinds_of(here.parts) == kinds_of(there.parts));
      CHECK(here.quantities.edge == there.quantities.edge);
    }
    CHECK(measure_slab(moved).concrete.si() == Approx(measure_slab(slab).concrete.si()));
  }
}

TEST_CASE("a mirrored slab has the same parts", "[properties][strips]") {
  Draw draw(5);
  for (int round = 0; round < 300; ++round) {
    const Slab slab = random_slab(draw);
    const std::size_t n = slab.sides.size();
    Slab mirrored = slab;
    for (std::size_t k = 0; k < n; ++k) {
      // Read backwards: corner k becomes corner n-1-k, side k lies between n-2-k and n-1-k.
      mirrored.base[n - 1 - k] = {-slab.base[k].x, slab.base[k].y};
      mirrored.sides[(2 * n - 2 - k) % n] = slab.sides[k];
    }
    CAPTURE(round);
    // Side numbers go with their sides, so ties are broken alike; pinwheel turns with the slab.
    for (const CornerStyle style : {CornerStyle::through, CornerStyle::mitre}) {
      CHECK(kinds_of(work_for(slab, style).parts) == kinds_of(work_for(mirrored, style).parts));
    }
    const SlabPlan a = measure_slab(slab), b = measure_slab(mirrored);
    CHECK(a.perimeter == b.perimeter);
    CHECK(a.concrete.si() == Approx(b.concrete.si()));
  }
}

TEST_CASE("scaling every length scales volumes by its cube", "[properties][measure]") {
  Draw draw(6);
  for (int round = 0; round < 300; ++round) {
    Slab slab = random_slab(draw);
    add_panel(slab, {}, mm(12));
    for (Side& side : slab.sides) side.panel_overhang = side.overhang / 2;
    Slab scaled = slab;
    const double k = draw.whole(2, 9);
    for (Point& p : scaled.base) p = {p.x * k, p.y * k};
    for (Side& side : scaled.sides) {
      side.overhang = side.overhang * k;
      side.panel_overhang = side.panel_overhang * k;
    }
    scaled.thickness = scaled.thickness * k;
    scaled.panel->thickness = scaled.panel->thickness * k;
    const SlabPlan small = measure_slab(slab), large = measure_slab(scaled);
    CHECK(large.concrete.si() == Approx(small.concrete.si() * k * k * k));
    CHECK(large.panel_displacement.si() == Approx(small.panel_displacement.si() * k * k * k));
    CHECK(large.perimeter == small.perimeter * k);
  }
}

TEST_CASE("slabs in another order keep their parts but for the marks", "[properties][strips]") {
  Draw draw(7);
  const Slab first = random_slab(draw), second = random_slab(draw);
  const Forms forms = long_boards(CornerStyle::through);
  MarkCounter forward, backward;
  const auto first_a =
      form_work(first, measure_slab(first), forms, kilograms_per_m3(2300), forward);
  const auto second_a =
      form_work(second, measure_slab(second), forms, kilograms_per_m3(2300), forward);
  const auto second_b =
      form_work(second, measure_slab(second), forms, kilograms_per_m3(2300), backward);
  const auto first_b =
      form_work(first, measure_slab(first), forms, kilograms_per_m3(2300), backward);
  CHECK(kinds_of(first_a.parts) == kinds_of(first_b.parts));
  CHECK(kinds_of(second_a.parts) == kinds_of(second_b.parts));
  CHECK(second_a.parts.front().mark != first_a.parts.front().mark);
}
