// SPDX-License-Identifier: MIT
#include "slab/field.h"

#include <algorithm>
#include <cmath>
#include <limits>

namespace strikeoff {
namespace {

/// A line may leave two neighbouring cells by rounding; heights are continuous, so a billionth of
/// a millimetre too much does no harm.
constexpr double rounding_m = 1e-12;

double height_in(const FieldCell& cell, double x, double y) {
  double height = cell.surface.at(x, y);
  for (const Crease& crease : cell.creases) {
    height += crease.steep * std::max(0.0, crease.line.inside(x, y));
  }
  return height;
}

double integral(const Surface& s, const Moments& m) {
  return s.one * m.one + s.x * m.x + s.y * m.y + s.xx * m.xx + s.xy * m.xy + s.yy * m.yy;
}

/// The region on a border's inner side; it is cut only where the border meets its bounding box.
Outline kept(const Outline& region, const Rectangle& box, const Border& border) {
  bool some_in = false, some_out = false;
  for (const Point& corner : corners_of(box)) {
    (border.inside(corner.x.in_m(), corner.y.in_m()) >= 0 ? some_in : some_out) = true;
  }
  if (!some_out) return region;
  if (!some_in) return {};
  return clipped(region, {Length::m(border.x), Length::m(border.y)},
                 {Length::m(border.x + border.ny), Length::m(border.y - border.nx)});
}

double volume_in(const FieldCell& cell, Outline region) {
  for (const Border& border : cell.borders) {
    region = kept(region, bounding_box(region), border);
    if (region.empty()) return 0;
  }
  double sum = integral(cell.surface, moments(region));
  if (cell.creases.empty()) return sum;
  const Rectangle box = bounding_box(region);
  for (const Crease& crease : cell.creases) {
    const Outline beyond = kept(region, box, crease.line);
    if (beyond.empty()) continue;
    const Border& line = crease.line;
    const Surface distance{-line.x * line.nx - line.y * line.ny, line.nx, line.ny};
    sum += crease.steep * integral(distance, moments(beyond));
  }
  return sum;
}

/// A straight line in metres, followed from 0 to 1.
struct Walk {
  double x, y, dx, dy;
  [[nodiscard]] double x_at(double t) const { return x + dx * t; }
  [[nodiscard]] double y_at(double t) const { return y + dy * t; }
};

struct Stretch {
  double from = 0, to = 1;
};

Stretch within(const FieldCell& cell, const Walk& walk) {
  Stretch s;
  for (const Border& border : cell.borders) {
    const double start = border.inside(walk.x, walk.y) + rounding_m;
    const double end = border.inside(walk.x_at(1), walk.y_at(1)) + rounding_m;
    if (start < 0 && end < 0) return {1, 0};
    if (start < 0) s.from = std::max(s.from, start / (start - end));
    if (end < 0) s.to = std::min(s.to, start / (start - end));
  }
  return s;
}

struct HeightOn {
  double t, height;
};

/// Where a line crosses creases its slope changes; between two of them the height is a parabola
/// without creases and a straight line with them.
void add_turns(const FieldCell& cell, const Walk& walk, Stretch s, std::vector<HeightOn>& found) {
  struct Bend {
    double t, slope;
  };
  const auto height = [&](double t) { return height_in(cell, walk.x_at(t), walk.y_at(t)); };
  found.push_back({s.from, height(s.from)});
  found.push_back({s.to, height(s.to)});
  const Surface& f = cell.surface;
  const double square =
      f.xx * walk.dx * walk.dx + f.xy * walk.dx * walk.dy + f.yy * walk.dy * walk.dy;
  if (square != 0) {
    // f(t) = f(0) + (f(1) - f(0) - square) t + square t2 turns where its derivative is 0.
    const double t = -(height(1) - height(0) - square) / (2 * square);
    if (t > s.from && t < s.to) found.push_back({t, height(t)});
  }
  std::vector<double> bends;
  for (const Crease& crease : cell.creases) {
    const double start = crease.line.inside(walk.x_at(s.from), walk.y_at(s.from));
    const double end = crease.line.inside(walk.x_at(s.to), walk.y_at(s.to));
    if ((start < 0 && end > 0) || (start > 0 && end < 0)) {
      bends.push_back(s.from + (s.to - s.from) * start / (start - end));
    }
  }
  for (const double t : bends) found.push_back({t, height(t)});
}

}  // namespace

Surface& Surface::operator+=(const Surface& other) {
  one += other.one;
  x += other.x;
  y += other.y;
  xx += other.xx;
  xy += other.xy;
  yy += other.yy;
  return *this;
}

double Surface::at(double px, double py) const {
  return one + px * (x + xx * px + xy * py) + py * (y + yy * py);
}

Field::Field(const Point& origin, std::vector<FieldCell> cells)
    : origin_(origin), cells_(std::move(cells)) {}

Length Field::at(const Point& place) const {
  const double x = (place.x - origin_.x).in_m(), y = (place.y - origin_.y).in_m();
  // The cell the place lies deepest in: one always has it, up to rounding on a border.
  const FieldCell* best = nullptr;
  double deepest = -std::numeric_limits<double>::infinity();
  for (const FieldCell& cell : cells_) {
    double depth = std::numeric_limits<double>::max();
    for (const Border& border : cell.borders) depth = std::min(depth, border.inside(x, y));
    if (depth <= deepest) continue;
    deepest = depth;
    best = &cell;
  }
  return best == nullptr ? Length{} : Length::m(height_in(*best, x, y));
}

Volume Field::over(const Outline& region) const {
  if (is_flat() || region.empty()) return {};
  Outline near = region;
  for (OutlineEdge& edge : near) {
    edge.from = {edge.from.x - origin_.x, edge.from.y - origin_.y};
  }
  double sum = 0;
  for (const FieldCell& cell : cells_) sum += volume_in(cell, near);
  return Volume::from_si(sum);
}

std::vector<HeightAt> Field::turns(const Point& a, const Point& b) const {
  const Walk walk{(a.x - origin_.x).in_m(), (a.y - origin_.y).in_m(), (b.x - a.x).in_m(),
                  (b.y - a.y).in_m()};
  std::vector<HeightOn> found;
  for (const FieldCell& cell : cells_) {
    const Stretch stretch = within(cell, walk);
    if (stretch.from <= stretch.to) add_turns(cell, walk, stretch, found);
  }
  std::vector<HeightAt> result;
  if (is_flat()) result = {{{}, a}, {{}, b}};
  for (const HeightOn& turn : found) {
    result.push_back(
        {Length::m(turn.height), {a.x + (b.x - a.x) * turn.t, a.y + (b.y - a.y) * turn.t}});
  }
  return result;
}

Area Field::along(const Point& a, const Point& b) const {
  if (is_flat()) return {};
  const Length dx = b.x - a.x, dy = b.y - a.y;
  const auto from_a = [&](const Point& p) { return (p.x - a.x) * dx + (p.y - a.y) * dy; };
  std::vector<HeightAt> found = turns(a, b);
  std::sort(found.begin(), found.end(),
            [&](const HeightAt& p, const HeightAt& q) { return from_a(p.at) < from_a(q.at); });
  // From turn to turn the height is a parabola at most, for which Simpson's rule is exact.
  Area sum;
  for (std::size_t i = 1; i < found.size(); ++i) {
    const HeightAt &p = found[i - 1], &q = found[i];
    const Length middle = at({(p.at.x + q.at.x) / 2, (p.at.y + q.at.y) / 2});
    sum += edge_length({p.at, q.at}, 0) * ((p.height + middle * 4 + q.height) / 6);
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
