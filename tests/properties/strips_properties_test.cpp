// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <map>
#include <tuple>

#include "slab/corners.h"
#include "slab/measure.h"
#include "slab/strips.h"
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

/// The rectangle of a strip along side k of the outline, from `from` to `to` along it and from
/// `low` to `high` outwards.
Rectangle strip_at(const Polygon& outline, std::size_t k, Length from, Length to, Length low,
                   Length high) {
  const Point &a = outline[k], &b = outline[(k + 1) % outline.size()];
  const Length length = edge_length(outline, k);
  const double dx = (b.x - a.x) / length, dy = (b.y - a.y) / length;
  const Point p{a.x + from * dx + low * dy, a.y + from * dy - low * dx};
  const Point q{a.x + to * dx + high * dy, a.y + to * dy - high * dx};
  const Point corner{std::min(p.x, q.x), std::min(p.y, q.y)};
  return {corner, std::max(p.x, q.x) - corner.x, std::max(p.y, q.y) - corner.y};
}

bool none_overlap(const std::vector<Rectangle>& strips) {
  for (std::size_t i = 0; i < strips.size(); ++i) {
    for (std::size_t j = i + 1; j < strips.size(); ++j) {
      if (overlaps(strips[i], strips[j])) return false;
    }
  }
  return true;
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
  return form_work(slab, measure_slab(slab), long_boards(style), marks);
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
      Area parts, strips;
      for (const Part& p : work_for(slab, style).parts) {
        if (p.role.starts_with("soffit")) parts += p.length * p.width * p.quantity;
      }
      CHECK(parts.si() == Approx((shape.area - signed_area(slab.base)).si()).margin(1e-12));

      std::vector<Rectangle> soffits;
      const auto ends = strip_ends(slab, shape.outline, style, s);
      for (std::size_t k = 0; k < slab.sides.size(); ++k) {
        if (slab.sides[k].overhang == Length{}) continue;
        soffits.push_back(strip_at(shape.outline, k, -ends[k].soffit_left,
                                   edge_length(shape.outline, k) + ends[k].soffit_right,
                                   -slab.sides[k].overhang, {}));
        strips += area(soffits.back());
        CHECK(contains(shape.outline, soffits.back()));
        CHECK(overlap(slab.base, soffits.back()).si() == Approx(0).margin(1e-12));
      }
      CHECK(none_overlap(soffits));
      CHECK(strips.si() == Approx(parts.si()).margin(1e-12));
    }
  }
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
      std::vector<Rectangle> edges;
      const auto ends = strip_ends(slab, shape.outline, style, s);
      for (std::size_t k = 0; k < n; ++k) {
        if (slab.sides[k].wall) continue;
        edges.push_back(strip_at(shape.outline, k, -ends[k].edge_left,
                                 edge_length(shape.outline, k) + ends[k].edge_right, {}, s));
        CHECK(overlap(shape.outline, edges.back()).si() == Approx(0).margin(1e-12));
      }
      CHECK(none_overlap(edges));
    }
  }
  CHECK(tried > 900);
}

TEST_CASE("mitred edge strips add one thickness at each convex end", "[properties][strips]") {
  Draw draw(3);
  for (int round = 0; round < 300; ++round) {
    const Slab slab = random_slab(draw);
    const SlabPlan shape = measure_slab(slab);
    const auto ends = strip_ends(slab, shape.outline, CornerStyle::mitre, s);
    const std::size_t n = slab.sides.size();
    for (std::size_t k = 0; k < n; ++k) {
      const std::size_t before = (k + n - 1) % n;
      if (slab.sides[k].wall || slab.sides[before].wall) {
        CHECK((slab.sides[k].wall || ends[k].left_cut_deg == 0));
        continue;
      }
      const bool convex = is_convex_corner(slab.base, k);
      CHECK(ends[k].edge_left == (convex ? s : Length{}));
      CHECK(ends[before].edge_right == ends[k].edge_left);
      CHECK(ends[k].left_cut_deg == (convex ? 45 : -45));
      CHECK(ends[before].right_cut_deg == ends[k].left_cut_deg);
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
  const auto first_a = form_work(first, measure_slab(first), forms, forward);
  const auto second_a = form_work(second, measure_slab(second), forms, forward);
  const auto second_b = form_work(second, measure_slab(second), forms, backward);
  const auto first_b = form_work(first, measure_slab(first), forms, backward);
  CHECK(kinds_of(first_a.parts) == kinds_of(first_b.parts));
  CHECK(kinds_of(second_a.parts) == kinds_of(second_b.parts));
  CHECK(second_a.parts.front().mark != first_a.parts.front().mark);
}
