// SPDX-License-Identifier: MIT
#include <cmath>

#include "slab/measure.h"
#include "strikeoff/geometry.h"
#include "strikeoff/outline.h"
#include "support/published.h"
#include "support/slabs.h"

namespace strikeoff::test {
namespace {

const double pi = std::acos(-1.0);

const PublishedCase& case_named(const std::string& id) {
  for (const PublishedCase& one : published_cases()) {
    if (one.id() == id) return one;
  }
  throw std::runtime_error("no case " + id);
}

/// The corners of "(0,0)(96,0)…", in inches.
Polygon corners(const PublishedCase& one) {
  const std::vector<double> numbers = one.numbers("pts");
  Polygon polygon;
  for (std::size_t i = 0; i + 1 < numbers.size(); i += 2) {
    polygon.push_back({Length::inches(numbers[i]), Length::inches(numbers[i + 1])});
  }
  return polygon;
}

Polygon rectangle(const PublishedCase& one) {
  const std::vector<double> sides = one.numbers("rect");
  return corners_of({{}, Length::inches(sides.at(0)), Length::inches(sides.at(1))});
}

Polygon regular(std::size_t sides, Length side) {
  const double n = static_cast<double>(sides);
  const Length radius = side / (2 * std::sin(pi / n));
  Polygon polygon;
  for (std::size_t k = 0; k < sides; ++k) {
    const double angle = 2 * pi * static_cast<double>(k) / n;
    polygon.push_back({radius * std::cos(angle), radius * std::sin(angle)});
  }
  return polygon;
}

Answers shoelace(const PublishedCase& one) {
  const Polygon polygon = corners(one);
  Answers answers = {{"A", signed_area(polygon)}, {"P", perimeter(polygon)}};
  if (one.expects("cx")) {
    const Point middle = centroid(moments(outline_of(polygon)));
    answers.emplace("cx", middle.x);
    answers.emplace("cy", middle.y);
  }
  return answers;
}

Polygon moved_out(const Polygon& polygon, Length by) {
  return offset_edges(polygon, std::vector<Length>(polygon.size(), by));
}

/// As far from the polygon everywhere: mitred, then rounded at the corners that turn outwards.
Outline rounded_out(const Polygon& polygon, Length by) {
  const Polygon out = moved_out(polygon, by);
  std::vector<CornerCut> cuts;
  for (std::size_t k = 0; k < out.size(); ++k) {
    if (is_convex_corner(out, k)) cuts.push_back({k, by});
  }
  return with_corners(out, cuts);
}

Answers rounded_rectangle(const PublishedCase& one) {
  const Outline outline = rounded_out(rectangle(one), one.get<Length>("d"));
  return {{"A", area(outline)}, {"perimeter", perimeter(outline)}};
}

Answers mitred_rectangle(const PublishedCase& one) {
  return {{"A", signed_area(moved_out(rectangle(one), one.get<Length>("d")))}};
}

Answers mitred_triangle(const PublishedCase& one) {
  return {{"A", signed_area(moved_out(regular(3, one.get<Length>("a")), one.get<Length>("d")))}};
}

Answers mitred_l(const PublishedCase& one) {
  const Polygon base = corners(case_named(one.text("L")));
  return {{"A", signed_area(moved_out(base, one.get<Length>("d")))}};
}

Answers rounded_l(const PublishedCase& one) {
  const Polygon base = corners(case_named(one.text("L")));
  return {{"A", area(rounded_out(base, one.get<Length>("d")))}};
}

/// In metres, so that the plain number is the area in square metres.
Answers regular_polygon(const PublishedCase& one) {
  const auto sides = static_cast<std::size_t>(one.number("n"));
  return {{"A", signed_area(regular(sides, Length::m(one.number("a")))).si()}};
}

/// A square with its corners cut off, as a job cuts them.
Answers octagon(const PublishedCase& one) {
  const Length across = one.get<Length>("s");
  const Polygon square = corners_of({{}, across, across});
  std::vector<CornerCut> cuts;
  for (std::size_t k = 0; k < 4; ++k) cuts.push_back({k, across / (2 + std::sqrt(2.0)), false});
  return {{"A", area(with_corners(square, cuts))}};
}

/// An arc and its chord: the arc turns by twice the angle whose cosine is (r - h)/r.
Answers segment(const PublishedCase& one) {
  const Length r = one.get<Length>("r"), h = one.get<Length>("h");
  const double half = std::acos((r - h) / r);
  const Length chord = r * (2 * std::sin(half));
  const Outline outline = {{{chord, {}}, 2 * half}, {{}, 0}};
  return {{"A", area(outline)}, {"chord", bounding_box(outline).length}};
}

Answers half_and_full_disc(const PublishedCase& one) {
  const Length r = one.get<Length>("r");
  const Outline half = {{{r * 2, {}}, pi}, {{}, 0}};
  return {{"half", area(half)}, {"full", area(outline_of({{}, r * 2, r * 2}, r))}};
}

/// What rounding one corner of a large square takes away.
Area fillet(Length radius) {
  const Polygon square = corners_of({{}, Length::inches(10), Length::inches(10)});
  const CornerCut cut = {0, radius};
  return signed_area(square) - area(with_corners(square, {&cut, 1}));
}

Answers corner_fillet(const PublishedCase& one) {
  return {{"dA", fillet(one.get<Length>("r"))}};
}

Answers round_over(const PublishedCase& one) {
  return {{"V", fillet(one.get<Length>("r")) * one.get<Length>("L")}};
}

/// A circle drawn by 64 chords, and the circle.
Answers drawn_circle(const PublishedCase& one) {
  const Length r = Length::inches(10);
  const Outline circle = outline_of({{}, r * 2, r * 2}, r);
  const Length sagitta = r * (1 - std::cos(pi / one.number("n")));
  const Polygon drawn = chords(circle, sagitta * 1.001);
  return {{"ratio", signed_area(drawn) / area(circle)}};
}

/// A slab whose top falls to its front, as thick there as the front depths.
Answers sloping_top(const PublishedCase& one) {
  const std::vector<double> sides = one.numbers("rect"), depths = one.numbers("depths");
  const Length thin = Length::inches(depths.at(2)), thick = Length::inches(depths.at(0));
  const Length run = Length::inches(sides.at(0));
  Slab slab = slab_on(corners_of({{}, Length::inches(sides.at(1)), run}), {}, thin);
  slab.fall = Fall{(thick - thin) / run, 0};
  return {{"V", measure_slab(slab).concrete}};
}

/// A base that lies lower at two of its three corners under a level top.
Answers hollow_triangle(const PublishedCase& one) {
  const std::vector<double> depths = one.numbers("depths");
  const Length ten = Length::inches(10);  // 10 x 10 / 2 = the 50 in2 of the case
  Slab slab = slab_on({{}, {ten, {}}, {{}, ten}}, {}, Length::inches(depths.at(0)));
  for (std::size_t k = 0; k < 3; ++k) {
    slab.levels.push_back({slab.base[k], Length::inches(depths[k] - depths[0])});
  }
  return {{"V", measure_slab(slab).concrete}};
}

/// 2 - 0.01 x deep: 1.04 in at the far end, x = 96 in, and that much more elsewhere.
Answers sloping_base(const PublishedCase& one) {
  Slab slab = slab_on(corners(case_named(one.text("poly"))), {}, Length::inches(1.04));
  for (const Point& at : slab.base) {
    slab.levels.push_back({at, Length::inches(0.01) * (96 - at.x.in_in())});
  }
  return {{"V", measure_slab(slab).concrete}};
}

Answers basin(const PublishedCase& one) {
  const std::vector<double> sides = one.numbers("slab");
  const Length r = one.get<Length>("r");
  Slab slab = slab_on(corners_of({{}, Length::inches(sides.at(1)), Length::inches(sides.at(0))}),
                      {}, Length::inches(sides.at(2)));
  const Point corner = {Length::inches(20), Length::inches(4)};
  slab.openings.push_back({"basin", {corner, r * 2, r * 2}, true, r});
  return {{"V", measure_slab(slab).concrete}};
}

}  // namespace

Asks geometry_asks() {
  return {{"GE-01", shoelace},
          {"GE-02", shoelace},
          {"GE-03", rounded_rectangle},
          {"GE-04", mitred_rectangle},
          {"GE-05", mitred_triangle},
          {"GE-06", mitred_l},
          {"GE-07", rounded_l},
          {"GE-08", mitred_rectangle},
          {"GE-09", regular_polygon},
          {"GE-10", regular_polygon},
          {"GE-11", regular_polygon},
          {"GE-12", regular_polygon},
          {"GE-13", octagon},
          {"GE-15", segment},
          {"GE-16", half_and_full_disc},
          {"GE-18", corner_fillet},
          {"GE-19", round_over},
          {"GE-20", drawn_circle},
          {"TV-01", sloping_top},
          {"TV-02", hollow_triangle},
          {"TV-03", sloping_base},
          {"TV-05", basin}};
}

}  // namespace strikeoff::test
