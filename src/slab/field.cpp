// SPDX-License-Identifier: MIT
#include "slab/field.h"

#include <algorithm>
#include <cmath>
#include <limits>
#include <utility>

namespace strikeoff {
namespace {

/// A line may leave two neighbouring cells by rounding; heights are continuous, so a billionth of
/// a millimetre too much does no harm.
constexpr double rounding_m = 1e-12;
constexpr double at_end = 1e-9;  // shares of a line as near to its ends are there

double integral(const Surface& s, const Moments& m) {
  return s.one * m.one + s.x * m.x + s.y * m.y + s.xx * m.xx + s.xy * m.xy + s.yy * m.yy;
}

/// Over a region in a box, cut only by the borders that meet the box.
double volume_in(const FieldCell& cell, Outline region, const Polygon& box) {
  for (const HalfPlane& border : cell.borders) {
    int inside = 0;
    for (const Point& corner : box) inside += border.depth(vec(corner)) > 0;
    if (inside == 0 || region.empty()) return 0;
    if (inside == 4) continue;
    region = clipped(region, point(border.at), point(border.at + border.way));
  }
  return integral(cell.surface, moments(region));
}

/// The shares of the way between two places where a line comes into a cell and leaves it; none is
/// inside when the first is greater.
std::pair<double, double> stretch_in(const FieldCell& cell, Vec a, Vec b) {
  double enter = 0, leave = 1;
  for (const HalfPlane& border : cell.borders) {
    const double from = border.depth(a) + rounding_m, to = border.depth(b) + rounding_m;
    if (from < 0) enter = std::max(enter, from < to ? from / (from - to) : 2);
    if (to < 0) leave = std::min(leave, to < from ? from / (from - to) : -1);
  }
  return {enter, leave};
}

/// The share of the way where a surface is level along it; none has it where there is none.
double level_share(const Surface& s, Vec a, Vec b) {
  const Vec way = b - a;
  // s(t) = s(0) + (s(1) - s(0) - square) t + square t2
  const double square = s.xx * way.x * way.x + s.xy * way.x * way.y + s.yy * way.y * way.y;
  return square == 0 ? -1 : (square + s.at(a) - s.at(b)) / (2 * square);
}

}  // namespace

Surface& Surface::operator+=(const Surface& o) {
  one += o.one, x += o.x, y += o.y, xx += o.xx, xy += o.xy, yy += o.yy;
  return *this;
}

double Surface::at(Vec p) const {
  return one + p.x * (x + xx * p.x + xy * p.y) + p.y * (y + yy * p.y);
}

Field::Field(const Point& origin, std::vector<FieldCell> cells)
    : origin_(origin), cells_(std::move(cells)) {}

Length Field::at(const Point& place) const {
  const Vec p = vec(origin_, place);
  // The cell the place lies deepest in: one always has it, up to rounding on a border.
  double deepest = -std::numeric_limits<double>::infinity(), height = 0;
  for (const FieldCell& cell : cells_) {
    double depth = std::numeric_limits<double>::max();
    for (const HalfPlane& border : cell.borders) depth = std::min(depth, border.depth(p));
    if (depth <= deepest) continue;
    deepest = depth;
    height = cell.surface.at(p);
  }
  return Length::m(height);
}

Volume Field::over(const Outline& region) const {
  if (is_flat() || region.empty()) return {};
  Outline near = region;
  for (OutlineEdge& edge : near) edge.from = point(vec(origin_, edge.from));
  const Polygon box = corners_of(bounding_box(near));
  double sum = 0;
  for (const FieldCell& cell : cells_) sum += volume_in(cell, near, box);
  return Volume::from_si(sum);
}

std::vector<HeightAt> Field::turns(const Point& a, const Point& b) const {
  if (is_flat()) return {{{}, a}, {{}, b}};
  const Vec from = vec(origin_, a), to = vec(origin_, b);
  std::vector<std::pair<double, double>> found;  // shares of the way, and heights there
  for (const FieldCell& cell : cells_) {
    const auto [enter, leave] = stretch_in(cell, from, to);
    for (double t : {enter, leave, level_share(cell.surface, from, to)}) {
      if (t < enter || t > leave) continue;
      if (std::abs(t - std::round(t)) < at_end) t = std::round(t);
      found.emplace_back(t, cell.surface.at(from + (to - from) * t));
    }
  }
  std::sort(found.begin(), found.end());
  std::vector<HeightAt> turns;
  for (const auto& [t, height] : found) turns.push_back({Length::m(height), between(a, b, t)});
  return turns;
}

Length Field::most(const Point& a, const Point& b) const {
  const std::vector<HeightAt> found = turns(a, b);
  const auto lower = [](const HeightAt& p, const HeightAt& q) { return p.height < q.height; };
  return std::max_element(found.begin(), found.end(), lower)->height;
}

Area Field::along(const Point& a, const Point& b) const {
  if (is_flat()) return {};
  const std::vector<HeightAt> found = turns(a, b);
  // From turn to turn the height is a parabola at most, for which Simpson's rule is exact.
  Area sum;
  for (std::size_t i = 1; i < found.size(); ++i) {
    const HeightAt &p = found[i - 1], &q = found[i];
    const Length middle = at(between(p.at, q.at, 0.5));
    sum += distance(p.at, q.at) * ((p.height + middle * 4 + q.height) / 6);
  }
  return sum;
}

Field Field::plus(const Field& plane) const {
  if (plane.is_flat()) return *this;
  if (is_flat()) return plane;
  Field sum = *this;
  for (FieldCell& cell : sum.cells_) cell.surface += plane.cells_.front().surface;
  return sum;
}

}  // namespace strikeoff
