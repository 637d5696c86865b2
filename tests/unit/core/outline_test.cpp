// SPDX-License-Identifier: MIT
#include "strikeoff/outline.h"

#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>
#include <numbers>

#include "support/slabs.h"

using namespace strikeoff;
using strikeoff::test::in;

// Formulas and values marked "from memory" are elementary geometry recalled without the book; they
// were computed apart from this program. Steiner's formula for convex outlines was read
// (Encyclopedia of Mathematics, "Steiner formula").

namespace {

constexpr double pi = std::numbers::pi;

Polygon inches(const std::vector<std::pair<double, double>>& corners) {
  Polygon polygon;
  for (const auto& [x, y] : corners) polygon.push_back({in(x), in(y)});
  return polygon;
}

double square_inches(Area a) {
  return a.si() / (0.0254 * 0.0254);
}

Polygon grown(const Polygon& polygon, Length by) {
  return offset_edges(polygon, std::vector<Length>(polygon.size(), by));
}

Outline moved(Outline outline, Length x, Length y) {
  for (OutlineEdge& edge : outline) edge.from = {edge.from.x + x, edge.from.y + y};
  return outline;
}

Outline disc(Length radius) {
  return outline_of({{-radius, -radius}, 2 * radius, 2 * radius}, radius);
}

/// Two half turns: the least edges a circle has.
Outline two_halves(double r) {
  return {{{Length::m(r), {}}, pi}, {{Length::m(-r), {}}, pi}};
}

std::size_t arcs(const Outline& outline) {
  std::size_t count = 0;
  for (const OutlineEdge& edge : outline) count += edge.sweep != 0;
  return count;
}

void check_moments(const Moments& m, const Moments& expected, double within = 1e-12) {
  CHECK(m.one == Approx(expected.one).epsilon(within).margin(within));
  CHECK(m.x == Approx(expected.x).epsilon(within).margin(within));
  CHECK(m.y == Approx(expected.y).epsilon(within).margin(within));
  CHECK(m.xx == Approx(expected.xx).epsilon(within).margin(within));
  CHECK(m.xy == Approx(expected.xy).epsilon(within).margin(within));
  CHECK(m.yy == Approx(expected.yy).epsilon(within).margin(within));
}

const Polygon ell = inches({{0, 0}, {96, 0}, {96, 25}, {25, 25}, {25, 72}, {0, 72}});

}  // namespace

TEST_CASE("the area of straight outlines is that of the shoelace to the last digit", "[outline]") {
  CHECK(area(outline_of(ell)) == signed_area(ell));
  const Polygon pentagon = inches({{0, 0}, {7, 1}, {9, 5}, {4, 8}, {-1, 4}});
  CHECK(area(outline_of(pentagon)) == signed_area(pentagon));
  CHECK(perimeter(outline_of(ell)) == in(336));
  CHECK(bounding_box(outline_of(pentagon)) == Rectangle{{in(-1), in(0)}, in(10), in(8)});
  CHECK(area(Outline{}) == Area{});
}

TEST_CASE("the centroid of an L is that worked by hand", "[outline]") {
  // 96 x 25 about (48, 12.5) and 25 x 47 about (12.5, 48.5): x = (2400 x 48 + 1175 x 12.5)/3575.
  const Point middle = centroid(moments(outline_of(ell)));
  CHECK(middle.x.in_in() == Approx((2400 * 48 + 1175 * 12.5) / 3575).epsilon(1e-12));
  CHECK(middle.y.in_in() == Approx((2400 * 12.5 + 1175 * 48.5) / 3575).epsilon(1e-12));
  CHECK(middle.x.in_in() == Approx(36.33217).epsilon(1e-6));
  CHECK(middle.y.in_in() == Approx(24.33217).epsilon(1e-6));
}

TEST_CASE("moments of a rectangle are the integrals worked by hand", "[outline]") {
  // Over 0..3 by 0..2: 6, x 3^2/2 x 2, y 3 x 2^2/2, xx 3^3/3 x 2, xy 3^2/2 x 2^2/2, yy 3 x 2^3/3.
  const Outline plate = outline_of(corners_of({{}, Length::m(3), Length::m(2)}));
  check_moments(moments(plate), {6, 9, 6, 18, 9, 8});
  // A triangle 3 x 2: area 3, centroid (1, 2/3); x2: b h3/12 with the base along the other side,
  // 2 x 27/12; y2: 3 x 8/12; xy: b2 h2/24 (from memory).
  const Outline triangle = outline_of(Polygon{{}, {Length::m(3), {}}, {{}, Length::m(2)}});
  check_moments(moments(triangle), {3, 3, 2, 4.5, 36.0 / 24, 2});
}

TEST_CASE("a circle has its closed forms with two arcs or four", "[outline]") {
  // pi r2, and pi r4/4 about a diameter (from memory); moved by (3, -5) by the parallel axes.
  for (const Outline& circle : {two_halves(2), disc(Length::m(2))}) {
    check_moments(moments(circle), {4 * pi, 0, 0, 4 * pi, 0, 4 * pi});
    check_moments(moments(moved(circle, Length::m(3), Length::m(-5))),
                  {4 * pi, 12 * pi, -20 * pi, 4 * pi + 36 * pi, -60 * pi, 4 * pi + 100 * pi});
    CHECK(perimeter(circle).in_m() == Approx(4 * pi).epsilon(1e-14));
    const Rectangle box = bounding_box(circle);
    CHECK(box.at.x.in_m() == Approx(-2).epsilon(1e-15));
    CHECK(box.at.y.in_m() == Approx(-2).epsilon(1e-15));
    CHECK(box.length.in_m() == Approx(4).epsilon(1e-15));
    CHECK(box.depth.in_m() == Approx(4).epsilon(1e-15));
  }
  CHECK(arcs(disc(Length::m(2))) == 4);
  CHECK(disc(Length::m(2)).size() == 4);
}

TEST_CASE("a circular segment has the area of its rise", "[outline]") {
  // r2 acos((r - h)/r) - (r - h) sqrt(2rh - h2); r 10 in, h 3 in: 29.54988 in2 on a chord of
  // 14.28286 in (from memory).
  const double half = std::acos(0.7), chord = 2 * std::sqrt(51.0);
  CHECK(chord == Approx(14.28286).epsilon(1e-6));
  const Outline segment{{{in(chord / 2), {}}, 2 * half}, {{in(-chord / 2), {}}, 0}};
  CHECK(square_inches(area(segment)) == Approx(29.54988).epsilon(2e-7));
  CHECK(bounding_box(segment).depth.in_in() == Approx(3).epsilon(1e-12));
  // Its bound: half a disc at h = r.
  const Outline half_disc{{{in(10), {}}, pi}, {{in(-10), {}}, 0}};
  CHECK(square_inches(area(half_disc)) == Approx(157.0796).epsilon(1e-6));
  // The centroid of a half disc lies 4r/(3 pi) from its chord (from memory).
  CHECK(centroid(moments(half_disc)).y.in_in() == Approx(40 / (3 * pi)).epsilon(1e-12));
  // A chord of 60 in with a rise of 3 in has a radius of (60^2/4 + 3^2)/(2 x 3) = 151.5 in.
  const double flat = 4 * std::atan(3.0 / 30);
  const Outline shallow{{{in(30), {}}, flat}, {{in(-30), {}}, 0}};
  CHECK(perimeter(shallow).in_in() == Approx(60 + 151.5 * flat).epsilon(1e-12));
  CHECK(bounding_box(shallow).depth.in_in() == Approx(3).epsilon(1e-12));
}

TEST_CASE("a rounded corner takes what a fillet takes inwards and outwards", "[outline]") {
  // r2 (1 - pi/4): 0.858407 in2 for 2 in (from memory).
  for (const std::size_t corner : {0U, 1U, 2U, 3U, 4U, 5U}) {
    const std::vector<CornerCut> cut{{corner, in(2), true}};
    const double taken = 3575 - square_inches(area(with_corners(ell, cut)));
    CHECK(taken == Approx(corner == 3 ? -0.858407 : 0.858407).epsilon(1e-6));
    CHECK(set_back(ell, cut[0]) == in(2));
    // Two set-backs become a quarter turn.
    CHECK(perimeter(with_corners(ell, cut)).in_in() == Approx(336 - 4 + pi).epsilon(1e-12));
  }
  const std::vector<CornerCut> clip{{1, in(2), false}};
  CHECK(square_inches(area(with_corners(ell, clip))) == Approx(3573).epsilon(1e-13));
}

TEST_CASE("a fillet of any corner takes the kite less the sector", "[outline]") {
  // r2 (tan(t/2) - t/2) for a turn t (from memory); an equilateral triangle turns by 120 degrees.
  const Polygon triangle = inches({{0, 0}, {10, 0}, {5, 5 * std::sqrt(3.0)}});
  const std::vector<CornerCut> cut{{2, in(1), true}};
  const double taken = square_inches(signed_area(triangle) - area(with_corners(triangle, cut)));
  CHECK(taken == Approx(std::tan(pi / 3) - pi / 3).epsilon(1e-10));
  CHECK(set_back(triangle, cut[0]).in_in() == Approx(std::tan(pi / 3)).epsilon(1e-12));
}

TEST_CASE("a square with its corners clipped is a regular octagon", "[outline]") {
  // Across the flats s: 2 (sqrt 2 - 1) s2; 36 in: 1073.6416 in2; each clip s/(2 + sqrt 2) back
  // (from memory).
  const Length back = in(36 / (2 + std::sqrt(2.0)));
  std::vector<CornerCut> cuts;
  for (const std::size_t k : {0U, 1U, 2U, 3U}) cuts.push_back({k, back, false});
  const Outline octagon = with_corners(corners_of({{}, in(36), in(36)}), cuts);
  CHECK(octagon.size() == 8);
  CHECK(square_inches(area(octagon)) == Approx(1073.6416).epsilon(1e-7));
}

TEST_CASE("regular polygons have their closed areas", "[outline]") {
  // n a2/(4 tan(pi/n)), side 1 (from memory).
  for (const auto& [n, expected] : std::vector<std::pair<int, double>>{
           {3, 0.4330127}, {5, 1.7204774}, {6, 2.5980762}, {8, 4.8284271}}) {
    Polygon polygon;
    const double r = 0.5 / std::sin(pi / n);
    for (int k = 0; k < n; ++k) {
      polygon.push_back(
          {Length::m(r * std::cos(2 * pi * k / n)), Length::m(r * std::sin(2 * pi * k / n))});
    }
    CHECK(area(outline_of(polygon)).si() == Approx(expected).epsilon(1e-7));
  }
}

TEST_CASE("a convex outline rounded outwards grows by Steiner's formula", "[outline]") {
  // A + P d + pi d2 and P + 2 pi d, for a rectangle 30 x 60 in and 1 in: 1983.141593 in2 and
  // 186.283185 in (Steiner; read). The mitred outline with corners of radius d is just that.
  const Outline rounded = outline_of({{in(-1), in(-1)}, in(62), in(32)}, in(1));
  CHECK(square_inches(area(rounded)) == Approx(1983.141593).epsilon(1e-9));
  CHECK(perimeter(rounded).in_in() == Approx(186.283185).epsilon(1e-8));
}

TEST_CASE("an L grows by its own identities mitred and rounded", "[outline]") {
  // Mitred: A + P d + 4 d2 = 3915 in2. Rounded at its five outer corners only, the sharp inner one
  // staying sharp: A + P d + d2 (5 pi/4 - 1) = 3913.926991 in2 (from memory).
  const Polygon mitred = grown(ell, in(1));
  CHECK(square_inches(area(outline_of(mitred))) == Approx(3915).epsilon(1e-13));
  std::vector<CornerCut> cuts;
  for (const std::size_t k : {0U, 1U, 2U, 4U, 5U}) cuts.push_back({k, in(1), true});
  CHECK(square_inches(area(with_corners(mitred, cuts))) == Approx(3913.926991).epsilon(1e-9));
}

TEST_CASE("cuts that use up a whole edge leave no edge there", "[outline]") {
  const Outline stadium = outline_of({{}, in(60), in(20)}, in(10));
  CHECK(stadium.size() == 6);  // two long sides, four quarter turns
  CHECK(square_inches(area(stadium)) == Approx(40 * 20 + 100 * pi).epsilon(1e-12));
  CHECK(bounding_box(stadium) == Rectangle{{}, in(60), in(20)});
  // A slanted edge used up from both sides, whose middle is no whole number of nanometres.
  const Polygon kite = inches({{0, 0}, {7, 1}, {9, 5}, {4, 8}, {-1, 4}});
  const Length half = edge_length(kite, 4) / 2;  // from corner 4 round to corner 0
  const std::vector<CornerCut> cuts{{4, half, false}, {0, half, false}};
  CHECK(with_corners(kite, cuts).size() == 6);
  // Cuts at the first and the last corner in the order of the corners.
  const std::vector<CornerCut> ends{{0, in(10), true}, {3, in(10), true}};
  CHECK(with_corners(corners_of({{}, in(60), in(20)}), ends).size() == 5);
}

TEST_CASE("a cut of no size leaves its corner", "[outline]") {
  const std::vector<CornerCut> none{{1, Length{}, true}};
  CHECK(with_corners(ell, none) == outline_of(ell));
  CHECK(outline_of({{}, in(60), in(20)}, Length{}) == outline_of(corners_of({{}, in(60), in(20)})));
}

TEST_CASE("rounding leaves the box of a rectangle exactly", "[outline]") {
  for (const double r : {0.3, 1.7, 2.0, 3.33}) {
    const Rectangle whole{{in(0.1), in(-7.3)}, in(94), in(28.7)};
    CHECK(bounding_box(outline_of(whole, in(r))) == whole);
  }
}

TEST_CASE("the box of a re-entrant arc is that of its ends where it bends inwards", "[outline]") {
  // A square with a half disc bitten out of its right side.
  const Outline bitten{{{}, 0},
                       {{in(10), {}}, 0},
                       {{in(10), in(3)}, -pi},
                       {{in(10), in(7)}, 0},
                       {{in(10), in(10)}, 0},
                       {{{}, in(10)}, 0}};
  CHECK(bounding_box(bitten) == Rectangle{{}, in(10), in(10)});
  CHECK(square_inches(area(bitten)) == Approx(100 - 2 * pi).epsilon(1e-12));
  // Moments: those of the square less those of the half disc, whose centroid is 4r/(3 pi) in.
  const double metre = 0.0254, bite = 2 * pi, reach = 10 - 8 / (3 * pi);
  CHECK(moments(bitten).x / std::pow(metre, 3) == Approx(500 - bite * reach).epsilon(1e-12));
  CHECK(moments(bitten).y / std::pow(metre, 3) == Approx(500 - bite * 5).epsilon(1e-12));
}

TEST_CASE("a flat arc of a long radius loses no digits", "[outline]") {
  // Two arcs of 100 m radius over a chord of 1 m: the lens is c3/(6r) (1 + 3/40 (c/r)2 ...).
  const double half = std::asin(0.5 / 100);
  const Outline lens{{{Length::m(0.5), {}}, 2 * half}, {{Length::m(-0.5), {}}, 2 * half}};
  const double series = 2 * (1.0 / 1200) * (1 + 3.0 / 40 * 1e-4);
  CHECK(area(lens).si() == Approx(series).epsilon(1e-8));
  CHECK(std::abs(moments(lens).x) < 1e-12);
  CHECK(std::abs(moments(lens).y) < 1e-12);
}

TEST_CASE("moments about a far origin obey the parallel axes", "[outline]") {
  const Outline near = outline_of({{}, Length::m(3), Length::m(1)}, Length::m(0.2));
  const Outline far = moved(near, Length::m(4000), Length::m(-7000));
  const Moments m = moments(near);
  const double x = 4000, y = -7000;
  check_moments(moments(far),
                {m.one, m.x + x * m.one, m.y + y * m.one, m.xx + 2 * x * m.x + x * x * m.one,
                 m.xy + x * m.y + y * m.x + x * y * m.one, m.yy + 2 * y * m.y + y * y * m.one},
                1e-8);
  CHECK(area(far).si() == Approx(area(near).si()).epsilon(1e-12));
}

TEST_CASE("chords stay within the sagitta and are no more than needed", "[outline]") {
  for (const double sagitta_mm : {0.05, 0.5, 5.0}) {
    const Outline circle = disc(Length::mm(300));
    const Polygon drawn = chords(circle, Length::mm(sagitta_mm));
    const double n = static_cast<double>(drawn.size());
    CHECK(static_cast<int>(drawn.size()) % 4 == 0);
    // The middle of each chord lies r cos(pi/n) from the centre.
    CHECK(300 * (1 - std::cos(pi / n)) <= sagitta_mm);
    CHECK(300 * (1 - std::cos(pi / (n - 4))) > sagitta_mm);
    for (const Point& p : drawn) CHECK(std::hypot(p.x.in_mm(), p.y.in_mm()) == Approx(300));
    // A circle drawn with n sides has n/(2 pi) sin(2 pi/n) of its area (from memory).
    CHECK(signed_area(drawn) / area(circle) ==
          Approx(n / (2 * pi) * std::sin(2 * pi / n)).epsilon(1e-12));
  }
  // With 64 sides, 0.998394 (from memory): r (1 - cos(pi/64)) is 1.204 thousandths of the radius.
  const Polygon of_64 = chords(disc(Length::m(1)), Length::mm(1.21));
  CHECK(of_64.size() == 64);
  CHECK(signed_area(of_64).si() / pi == Approx(0.998394).epsilon(1e-6));
}

TEST_CASE("chords of a bite lie on its arc and never outside the slab", "[outline]") {
  const Outline bitten{{{}, 0},
                       {{in(10), {}}, 0},
                       {{in(10), in(3)}, -pi},
                       {{in(10), in(7)}, 0},
                       {{in(10), in(10)}, 0},
                       {{{}, in(10)}, 0}};
  const Polygon drawn = chords(bitten, drawn_within);
  for (const Point& p : drawn) {
    const double from_centre = std::hypot(p.x.in_in() - 10, p.y.in_in() - 5);
    CHECK(from_centre > 2 - 1e-12);
  }
  CHECK(signed_area(drawn) > area(bitten));  // chords of a bite leave slab in its place
  CHECK_FALSE(self_contact(drawn));
}

TEST_CASE("an arc smaller than the sagitta is still drawn", "[outline]") {
  CHECK(chords(disc(Length::mm(0.01)), Length::mm(0.05)).size() == 4);
  CHECK(chords(two_halves(0.001), Length::mm(50)).size() == 2);
}

TEST_CASE("clipping a circle through its middle leaves half in every direction", "[outline]") {
  for (int step = 0; step < 48; ++step) {
    const double angle = step * pi / 24;
    const Point along{Length::m(std::cos(angle)), Length::m(std::sin(angle))};
    for (const Outline& circle : {two_halves(1), disc(Length::m(1))}) {
      const Outline half = clipped(circle, Point{}, along);
      CHECK(area(half).si() == Approx(pi / 2).epsilon(1e-12));
      // The half disc to the left: centroid 4/(3 pi) along the normal.
      CHECK(centroid(moments(half)).x.in_m() ==
            Approx(-4 / (3 * pi) * std::sin(angle)).margin(1e-12));
      CHECK(centroid(moments(half)).y.in_m() ==
            Approx(4 / (3 * pi) * std::cos(angle)).margin(1e-12));
    }
  }
}

TEST_CASE("clipping with a tangent or a line that misses keeps all or nothing", "[outline]") {
  for (int step = 0; step < 48; ++step) {
    const double angle = step * pi / 24, c = std::cos(angle), s = std::sin(angle);
    for (const double distance : {1.0, 1.5}) {
      // A line at the right angle to (c, s), with the circle to its left, then to its right.
      const Point a{Length::m(distance * c), Length::m(distance * s)};
      const Point b{a.x - Length::m(s), a.y + Length::m(c)};
      for (const Outline& circle : {two_halves(1), disc(Length::m(1))}) {
        CHECK(area(clipped(circle, a, b)).si() == Approx(pi).epsilon(1e-12));
        CHECK(area(clipped(circle, b, a)).si() == Approx(0).margin(1e-12));
      }
    }
  }
  CHECK(clipped(disc(Length::m(1)), {Length::m(2), {}}, {Length::m(2), Length::m(-1)}).empty());
}

TEST_CASE("clipping along the chord of an arc leaves its segment", "[outline]") {
  // The quarter turn of a rounded square: the segment is r2 (pi/4 - 1/2).
  const Outline quarter{{{}, 0}, {{Length::m(1), {}}, pi / 2}, {{{}, Length::m(1)}, 0}};
  const Point a{{}, Length::m(1)}, b{Length::m(1), {}};
  CHECK(area(clipped(quarter, a, b)).si() == Approx(pi / 4 - 0.5).epsilon(1e-12));
  CHECK(area(clipped(quarter, b, a)).si() == Approx(0.5).epsilon(1e-12));
}

TEST_CASE("a line that crosses one arc twice cuts a segment off", "[outline]") {
  const Outline circle = two_halves(1);
  // At half the radius: acos(1/2) - 1/2 sqrt(3/4).
  const Point a{Length::m(3), Length::m(0.5)}, b{Length::m(-3), Length::m(0.5)};
  const double segment = pi / 3 - std::sqrt(3.0) / 4;
  CHECK(area(clipped(circle, b, a)).si() == Approx(segment).epsilon(1e-12));
  CHECK(area(clipped(circle, a, b)).si() == Approx(pi - segment).epsilon(1e-12));
}

TEST_CASE("parts that fall asunder keep their areas and moments", "[outline]") {
  // A U: clipped above y = 10, two legs 5 wide and 10 high are left.
  const Polygon u =
      inches({{0, 0}, {20, 0}, {20, 20}, {15, 20}, {15, 5}, {5, 5}, {5, 20}, {0, 20}});
  const Outline legs = clipped(outline_of(u), {in(0), in(10)}, {in(20), in(10)});
  CHECK(square_inches(area(legs)) == Approx(100).epsilon(1e-12));
  CHECK(centroid(moments(legs)).x.in_in() == Approx(10).epsilon(1e-12));
  CHECK(centroid(moments(legs)).y.in_in() == Approx(15).epsilon(1e-12));
  // And again by a line across: the right leg alone.
  const Outline right = clipped(legs, {in(10), in(20)}, {in(10), in(0)});
  CHECK(square_inches(area(clipped(right, {in(10), in(0)}, {in(10), in(20)}))) ==
        Approx(0).margin(1e-9));
  CHECK(square_inches(area(right)) == Approx(50).epsilon(1e-12));
}

TEST_CASE("what a disc and a re-entrant polygon have in common adds up", "[outline]") {
  // A disc of 10 in about the inner corner of the L: three quarters of it are on the L, and one
  // quarter on the rest of the square.
  const Outline circle = moved(disc(in(10)), in(25), in(25));
  const double quarter = 25 * pi;
  const Moments on = common_moments(circle, ell);
  CHECK(on.one / (0.0254 * 0.0254) == Approx(3 * quarter).epsilon(1e-11));
  const Polygon rest = inches({{25, 25}, {96, 25}, {96, 72}, {25, 72}});
  Moments sum = on;
  sum += common_moments(circle, rest);
  check_moments(sum, moments(circle), 1e-11);
  Moments difference = moments(circle);
  difference -= on;
  check_moments(difference, common_moments(circle, rest), 1e-11);
  // The same whichever corner the fan starts from.
  for (std::size_t k = 1; k < ell.size(); ++k) {
    Polygon turned = ell;
    std::rotate(turned.begin(), turned.begin() + static_cast<std::ptrdiff_t>(k), turned.end());
    check_moments(common_moments(circle, turned), on, 1e-11);
  }
}

TEST_CASE("a volume under a plane is the area times the depth at the centroid", "[outline]") {
  // From memory: over the L, 2 - x/100 in deep: 5851.125 in3; the mean of the six corners would
  // give 5708.083. Over 72 x 36 in with 2 in on one long side and 1.25 in on the other: 4212 in3.
  const Moments m = moments(outline_of(ell));
  const double inch = 0.0254;
  const double under_l = 2 * m.one / std::pow(inch, 2) - 0.01 * m.x / std::pow(inch, 3);
  CHECK(under_l == Approx(5851.125).epsilon(1e-12));
  double corners = 0;
  for (const Point& p : ell) corners += 2 - 0.01 * p.x.in_in();
  CHECK(corners / 6 * 3575 == Approx(5708.083).epsilon(1e-6));

  const Moments slope = moments(outline_of(corners_of({{}, in(72), in(36)})));
  const double under_slope =
      2 * slope.one / std::pow(inch, 2) - 0.75 / 36 * slope.y / std::pow(inch, 3);
  CHECK(under_slope == Approx(4212).epsilon(1e-12));

  // A triangle of 50 in2 with 1, 2 and 3 in at its corners: 100 in3, its mean corner.
  const Moments triangle = moments(outline_of(inches({{0, 0}, {10, 0}, {0, 10}})));
  const double under = triangle.one / std::pow(inch, 2) + 0.1 * triangle.x / std::pow(inch, 3) +
                       0.2 * triangle.y / std::pow(inch, 3);
  CHECK(under == Approx(100).epsilon(1e-12));
}

TEST_CASE("a slab with a basin cut out holds what is left", "[outline]") {
  // 25 x 60 x 1.5 in less a circle of 7.5 in radius: 1984.928 in3 (from memory).
  Moments top = moments(outline_of(corners_of({{}, in(60), in(25)})));
  top -= moments(moved(disc(in(7.5)), in(30), in(12)));
  CHECK(top.one / (0.0254 * 0.0254) * 1.5 == Approx(1984.928).epsilon(1e-6));
}
