// SPDX-License-Identifier: MIT
// Our geometry against another program's, GEOS, over thousands of made-up outlines.
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "support/geos.h"
#include "support/random_outlines.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

constexpr int outlines_each = 700;
constexpr double agree = 1e-9;  // of the outline's own area

/// What lies left of the line from a through b, as far as outlines here go.
Polygon left_of(const Point& a, const Point& b) {
  const double dx = (b.x - a.x).in_m(), dy = (b.y - a.y).in_m(), length = std::hypot(dx, dy);
  const double far = 50, ux = dx / length * far, uy = dy / length * far;
  const auto at = [&](double along, double left) {
    return Point{a.x + Length::m(along * ux - left * uy), a.y + Length::m(along * uy + left * ux)};
  };
  return {at(-1, 0), at(1, 0), at(1, 1), at(-1, 1)};
}

Point random_point(Draw& draw) {
  return {Length::mm(draw.whole(-4000, 4000)), Length::mm(draw.whole(-4000, 4000))};
}

struct ChordError {
  double sum = 0;        // what the chords leave out, less what they add, in m2
  double magnitude = 0;  // both together
};

/// Of the circular segments between the arcs and n equal chords each: r2 (t - sin t)/2 for the
/// angle t over one chord (from memory).
ChordError chord_error(const Outline& outline, Length sagitta) {
  ChordError error;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const OutlineEdge& edge = outline[i];
    if (edge.sweep == 0) continue;
    const Point& to = outline[(i + 1) % outline.size()].from;
    const double chord = std::hypot((to.x - edge.from.x).in_m(), (to.y - edge.from.y).in_m());
    const double r = chord / (2 * std::sin(std::abs(edge.sweep) / 2));
    const auto pieces =
        static_cast<double>(chords({edge, {to, 0}}, sagitta).size() - 1);  // the other is `to`
    const double angle = std::abs(edge.sweep) / pieces;
    const double left_out = pieces * r * r * (angle - std::sin(angle)) / 2;
    error.sum += edge.sweep > 0 ? left_out : -left_out;
    error.magnitude += left_out;
  }
  return error;
}

void check_against(const Moments& ours, const GeosRegion& theirs, double scale) {
  const double area = theirs.area().si();
  CHECK(std::abs(ours.one - area) <= agree * scale);
  const std::optional<Point> middle = theirs.centroid();
  // Moments about the origin, so outlines some metres away have some times their own area.
  CHECK(std::abs(ours.x - (middle ? middle->x.in_m() * area : 0)) <= 10 * agree * scale);
  CHECK(std::abs(ours.y - (middle ? middle->y.in_m() * area : 0)) <= 10 * agree * scale);
}

template <class Check>
void for_each_kind(Check check) {
  for (const auto& [kind, make] : {std::pair{"convex", &random_convex},
                                   {"re-entrant", &random_star},
                                   {"rectilinear", &random_rectilinear}}) {
    Draw draw(20260516);
    for (int number = 0; number < outlines_each; ++number) {
      CAPTURE(kind, number);
      const Polygon polygon = make(draw);
      REQUIRE_FALSE(self_contact(polygon));
      check(polygon, draw);
    }
  }
}

}  // namespace

TEST_CASE("outlines have the areas and centroids and lengths GEOS finds", "[geos]") {
  for_each_kind([](const Polygon& polygon, Draw&) {
    const GeosRegion theirs(polygon);
    REQUIRE(theirs.is_valid());
    const double area = theirs.area().si();
    CHECK(std::abs(signed_area(polygon).si() - area) <= agree * area);
    CHECK(perimeter(polygon).in_m() == Approx(theirs.perimeter().in_m()).epsilon(agree));
    check_against(moments(outline_of(polygon)), theirs, area);
  });
}

TEST_CASE("outlines less their openings have the areas and centroids GEOS finds", "[geos]") {
  for_each_kind([](const Polygon& polygon, Draw& draw) {
    // A smaller copy of the outline's own middle, if it is inside.
    const Point middle = centroid(moments(outline_of(polygon)));
    Polygon hole = star(draw, draw.whole(3, 9), 100, 180);
    const Point from = centroid(moments(outline_of(hole)));
    for (Point& p : hole) p = {p.x - from.x + middle.x, p.y - from.y + middle.y};
    if (!GeosRegion(polygon).covers(GeosRegion(hole))) return;
    Moments ours = moments(outline_of(polygon));
    ours -= moments(outline_of(hole));
    check_against(ours, GeosRegion(polygon, {hole}), signed_area(polygon).si());
  });
}

TEST_CASE("outlines cut by a line leave what GEOS finds left of it", "[geos]") {
  for_each_kind([](const Polygon& polygon, Draw& draw) {
    const Point a = random_point(draw), b = random_point(draw);
    if (a == b) return;
    check_against(moments(clipped(outline_of(polygon), a, b)),
                  GeosRegion(polygon).common(GeosRegion(left_of(a, b))), signed_area(polygon).si());
  });
}

TEST_CASE("outlines have in common with polygons what GEOS finds", "[geos]") {
  for_each_kind([](const Polygon& polygon, Draw& draw) {
    const Polygon convex = random_convex(draw), any = random_outline(draw);
    const Outline outline = outline_of(polygon);
    const double scale = signed_area(polygon).si();
    check_against(moments(clipped(outline, convex)), GeosRegion(polygon).common(GeosRegion(convex)),
                  scale);
    check_against(common_moments(outline, any), GeosRegion(polygon).common(GeosRegion(any)), scale);
  });
}

TEST_CASE("outlines cover the points and keep the distances GEOS finds", "[geos]") {
  for_each_kind([](const Polygon& polygon, Draw& draw) {
    const GeosRegion theirs(polygon);
    const Point p = random_point(draw);
    CHECK(contains(polygon, p) == theirs.covers(p));
    CHECK(distance(p, polygon).in_m() ==
          Approx(theirs.distance_to_boundary(p).in_m()).epsilon(agree).margin(agree));
    const Polygon other = random_outline(draw);
    if (!theirs.common(GeosRegion(other)).pieces()) {  // GEOS measures between regions
      CHECK(distance(polygon, other).in_m() ==
            Approx(theirs.distance(GeosRegion(other)).in_m()).epsilon(agree).margin(agree));
    }
  });
}

TEST_CASE("outlines moved outwards or inwards alike are those GEOS finds", "[geos]") {
  int compared = 0;
  for_each_kind([&](const Polygon& polygon, Draw& draw) {
    const Length by = Length::mm(draw.whole(-60, 60));
    // GEOS leaves out corners that bend inwards by less than a hundredth of the distance.
    for (std::size_t k = 0; k < polygon.size(); ++k) {
      const Polygon beside{polygon[(k + polygon.size() - 1) % polygon.size()],
                           polygon[(k + 1) % polygon.size()]};
      if (distance(polygon[k], beside) < Length::mm(1)) return;
    }
    const Polygon ours = offset_edges(polygon, std::vector<Length>(polygon.size(), by));
    if (swallowed_edge(polygon, ours) || self_contact(ours)) return;
    const GeosRegion theirs = GeosRegion(polygon).grown_mitred(by);
    ++compared;
    CHECK(theirs.pieces() == 1);
    CHECK(theirs.holes() == 0);
    CHECK(std::abs((signed_area(ours) - theirs.area()).si()) <= agree * theirs.area().si());
    CHECK(std::abs((GeosRegion(ours).common(theirs).area() - theirs.area()).si()) <=
          agree * theirs.area().si());
  });
  CHECK(compared > 2 * outlines_each);  // of three times that many
}

TEST_CASE("outlines with arcs have the area of their chords and the segments beside", "[geos]") {
  for_each_kind([](const Polygon& polygon, Draw& draw) {
    const Outline outline = random_cut_corners(draw, polygon);
    const Polygon drawn = chords(outline, drawn_within);
    if (self_contact(drawn)) return;  // a large radius may run into another edge of a star
    const double scale = signed_area(polygon).si();
    const GeosRegion theirs(drawn);
    const double segments = chord_error(outline, drawn_within).sum;
    CHECK(std::abs(area(outline).si() - theirs.area().si() - segments) <= agree * scale);
  });
}

TEST_CASE("outlines with arcs are cut as their chords are within the segments", "[geos]") {
  for_each_kind([](const Polygon& polygon, Draw& draw) {
    const Outline outline = random_cut_corners(draw, polygon);
    const Polygon drawn = chords(outline, drawn_within);
    if (self_contact(drawn)) return;
    const double scale = signed_area(polygon).si();
    const double slack = chord_error(outline, drawn_within).magnitude + agree * scale;
    const GeosRegion theirs(drawn);

    const Point a = random_point(draw), b = random_point(draw);
    if (a == b) return;
    const double left = area(clipped(outline, a, b)).si();
    const double right = area(clipped(outline, b, a)).si();
    CHECK(std::abs(left - theirs.common(GeosRegion(left_of(a, b))).area().si()) <= slack);
    CHECK(left + right == Approx(area(outline).si()).epsilon(agree));

    const Polygon any = random_outline(draw);
    const double common = common_moments(outline, any).one;
    CHECK(std::abs(common - theirs.common(GeosRegion(any)).area().si()) <= slack);
  });
}
