// SPDX-License-Identifier: MIT
#include "strikeoff/outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

#include "core/vec.h"

namespace strikeoff {
namespace {

constexpr double pi = std::numbers::pi;

/// An edge with both its ends.
struct Span {
  Point from, to;
  double sweep;
};

Span edge_at(const Outline& outline, std::size_t i) {
  return {outline[i].from, outline[(i + 1) % outline.size()].from, outline[i].sweep};
}

/// The circle an arc lies on, in metres, and where on it the arc begins.
struct Circle {
  Vec centre;
  double r, start;
  [[nodiscard]] Vec at(double angle) const {
    return {centre.x + r * std::cos(angle), centre.y + r * std::sin(angle)};
  }
};

Circle circle_of(const Span& e) {
  const Vec from = vec(e.from), chord = vec(e.to) - from;
  // The centre lies left of the chord by (c/2) cot(sweep/2); at half a turn it is on the chord.
  const double cotangent = std::cos(e.sweep / 2) / std::sin(e.sweep / 2);
  const Vec centre = (from + vec(e.to)) / 2 + chord.left() / 2 * cotangent, out = from - centre;
  return {centre, chord.length() / (2 * std::abs(std::sin(e.sweep / 2))), std::atan2(out.y, out.x)};
}

/// Of the triangle from the origin to an edge's chord.
void add_triangle(const Span& e, Moments& m) {
  const Vec a = vec(e.from), b = vec(e.to);
  const double twice = cross(a, b);
  m.one += twice / 2;
  m.x += twice * (a.x + b.x) / 6;
  m.y += twice * (a.y + b.y) / 6;
  m.xx += twice * (a.x * a.x + a.x * b.x + b.x * b.x) / 12;
  m.yy += twice * (a.y * a.y + a.y * b.y + b.y * b.y) / 12;
  m.xy += twice * (2 * a.x * a.y + a.x * b.y + b.x * a.y + 2 * b.x * b.y) / 24;
}

/// Of the circular segment between an arc and its chord, negative where the arc bulges inwards.
/// Sector less triangle, about the centre with u along the arc's bisector and v across it.
void add_segment(const Span& e, Moments& m) {
  const Circle circle = circle_of(e);
  const Vec c = circle.centre;
  const double a = std::abs(e.sweep) / 2, s = std::sin(a), k = std::cos(a), r = circle.r,
               r2 = r * r, sign = e.sweep > 0 ? 1 : -1;
  const double one = sign * r2 * (a - s * k);
  const double u = sign * r2 * r * 2 / 3 * s * s * s;
  const double uu = sign * r2 * r2 * ((a + s * k) / 4 - s * k * k * k / 2);
  const double vv = sign * r2 * r2 * ((a - s * k) / 4 - s * s * s * k / 6);
  const double middle = circle.start + e.sweep / 2, ux = std::cos(middle), uy = std::sin(middle);
  m.one += one;
  m.x += c.x * one + u * ux;
  m.y += c.y * one + u * uy;
  m.xx += c.x * c.x * one + 2 * c.x * u * ux + uu * ux * ux + vv * uy * uy;
  m.yy += c.y * c.y * one + 2 * c.y * u * uy + uu * uy * uy + vv * ux * ux;
  m.xy += c.x * c.y * one + (c.x * uy + c.y * ux) * u + (uu - vv) * ux * uy;
}

/// Corners closer than this are one: far above rounding, far below what a saw can show.
constexpr Length same_corner = Length::nm(1);

bool coincide(const Point& a, const Point& b) {
  return distance(a, b) < same_corner;
}

/// Angles from an arc's ends within which a point on it counts as that end, in radians.
constexpr double same_angle = 1e-9;

/// How far along an arc, from its start in the direction of its turn, it points at an angle: from
/// 0 up to its whole turn; nothing where it does not, or only at its ends.
std::optional<double> turned_to(double angle, const Circle& circle, double sweep) {
  double along = std::remainder(angle - circle.start, 2 * pi);
  if (sweep < 0) along = -along;
  if (along < 0) along += 2 * pi;
  const bool within = along > same_angle && along < std::abs(sweep) - same_angle;
  return within ? std::optional(along) : std::nullopt;
}

Outline joined(const std::vector<Span>& kept) {
  Outline outline;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    outline.push_back({kept[i].from, kept[i].sweep});
    if (!(kept[(i + 1) % kept.size()].from == kept[i].to)) outline.push_back({kept[i].to, 0});
  }
  return outline;
}

void cut_straight(const Point& a, const Point& b, const HalfPlane& half, std::vector<Span>& kept) {
  const double da = half.depth(vec(a)), db = half.depth(vec(b));
  if (da >= 0 && db >= 0) {
    kept.push_back({a, b, 0});
  } else if (da > 0 || db > 0) {
    const Point crossing = between(a, b, da / (da - db));
    kept.push_back(da > 0 ? Span{a, crossing, 0} : Span{crossing, b, 0});
  }
}

void cut_arc(const Span& arc, const HalfPlane& half, std::vector<Span>& kept) {
  const Circle c = circle_of(arc);
  const double away = half.depth(c.centre);
  std::vector<double> shares{0, 1};
  if (std::abs(away) < c.r) {
    // On the arc the depth is that of the centre + r cos(angle - angle of the normal).
    const Vec normal = half.way.left();
    const double angle = std::atan2(normal.y, normal.x), by = std::acos(-away / c.r);
    for (const double crossing : {angle + by, angle - by}) {
      const std::optional<double> along = turned_to(crossing, c, arc.sweep);
      if (along) shares.push_back(*along / std::abs(arc.sweep));
    }
    std::sort(shares.begin(), shares.end());
  }
  const auto on_arc = [&](double share) { return c.at(c.start + arc.sweep * share); };
  const auto point_at = [&](double share) {
    return share == 0 ? arc.from : share == 1 ? arc.to : point(on_arc(share));
  };
  // A piece is on one side of the line; where it touches the line, one of three points tells.
  const auto is_left = [&](double from, double to) {
    double farthest = 0;
    for (const double part : {0.25, 0.5, 0.75}) {
      const double depth = half.depth(on_arc(from + (to - from) * part));
      if (std::abs(depth) > std::abs(farthest)) farthest = depth;
    }
    return farthest > 0;
  };
  for (std::size_t i = 0; i + 1 < shares.size(); ++i) {
    const double from = shares[i], to = shares[i + 1];
    if (is_left(from, to)) kept.push_back({point_at(from), point_at(to), arc.sweep * (to - from)});
  }
}

}  // namespace

Outline outline_of(const Polygon& polygon) {
  Outline outline;
  for (const Point& corner : polygon) outline.push_back({corner, 0});
  return outline;
}

Outline outline_of(const Rectangle& rectangle, Length corner_radius) {
  const Polygon corners = corners_of(rectangle);
  if (corner_radius <= Length{}) return outline_of(corners);
  std::array<CornerCut, 4> cuts;
  for (std::size_t k = 0; k < cuts.size(); ++k) cuts[k] = {k, corner_radius, true};
  return with_corners(corners, cuts);
}

Length set_back(const Polygon& polygon, const CornerCut& cut) {
  return cut.round ? cut.size * std::abs(turn_at(polygon, cut.corner).tan_half) : cut.size;
}

Outline with_corners(const Polygon& polygon, std::span<const CornerCut> cuts) {
  const std::size_t n = polygon.size();
  std::vector<const CornerCut*> cut_at(n, nullptr);
  for (const CornerCut& cut : cuts) cut_at[cut.corner] = &cut;
  Outline outline;
  const auto add = [&](const OutlineEdge& edge) {
    // Cuts that use up a whole edge leave nothing straight between them.
    if (!outline.empty() && coincide(outline.back().from, edge.from)) outline.pop_back();
    outline.push_back(edge);
  };
  for (std::size_t k = 0; k < n; ++k) {
    const Point& corner = polygon[k];
    if (cut_at[k] == nullptr || cut_at[k]->size <= Length{}) {
      add({corner, 0});
      continue;
    }
    const Length back = set_back(polygon, *cut_at[k]);
    const Point &before = polygon[(k + n - 1) % n], &after = polygon[(k + 1) % n];
    add({towards(corner, before, back), cut_at[k]->round ? turn_at(polygon, k).radians : 0});
    add({towards(corner, after, back), 0});
  }
  if (outline.size() > 1 && coincide(outline.back().from, outline.front().from)) {
    outline.pop_back();
  }
  return outline;
}

Moments& Moments::operator+=(const Moments& o) {
  one += o.one, x += o.x, y += o.y, xx += o.xx, xy += o.xy, yy += o.yy;
  return *this;
}

Moments& Moments::operator-=(const Moments& o) {
  one -= o.one, x -= o.x, y -= o.y, xx -= o.xx, xy -= o.xy, yy -= o.yy;
  return *this;
}

Moments moments(const Outline& outline) {
  Moments sum;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Span edge = edge_at(outline, i);
    add_triangle(edge, sum);
    if (edge.sweep != 0) add_segment(edge, sum);
  }
  return sum;
}

Area area(const Outline& outline) {
  // About the first corner, so that a slab far from the origin loses nothing.
  if (outline.empty()) return {};
  const Point& origin = outline.front().from;
  Outline near;
  for (const OutlineEdge& edge : outline) {
    near.push_back({{edge.from.x - origin.x, edge.from.y - origin.y}, edge.sweep});
  }
  return Area::from_si(moments(near).one);
}

Length perimeter(const Outline& outline) {
  Length sum;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Span edge = edge_at(outline, i);
    if (edge.sweep != 0) {
      sum += Length::m(circle_of(edge).r * std::abs(edge.sweep));
    } else {
      sum += distance(edge.from, edge.to);
    }
  }
  return sum;
}

Rectangle bounding_box(const Outline& outline) {
  Polygon extremes;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    extremes.push_back(outline[i].from);
    const Span edge = edge_at(outline, i);
    if (edge.sweep == 0) continue;
    const Circle c = circle_of(edge);
    for (int quarter = 0; quarter < 4; ++quarter) {
      if (!turned_to(quarter * pi / 2, c, edge.sweep)) continue;
      constexpr std::array<Vec, 4> out{{{1, 0}, {0, 1}, {-1, 0}, {0, -1}}};
      extremes.push_back(point(c.centre + c.r * out[static_cast<std::size_t>(quarter)]));
    }
  }
  return bounding_box(extremes);
}

Point centroid(const Moments& m) {
  return point({m.x / m.one, m.y / m.one});
}

Polygon chords(const Outline& outline, Length sagitta) {
  Polygon polygon;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    polygon.push_back(outline[i].from);
    const Span edge = edge_at(outline, i);
    if (edge.sweep == 0) continue;
    const Circle c = circle_of(edge);
    // A chord over the angle a rises r (1 - cos(a/2)) = 2 r sin2(a/4); over half a turn at most.
    const double most = 4 * std::asin(std::sqrt(std::min(0.5, sagitta.in_m() / (2 * c.r))));
    const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(edge.sweep) / most)));
    for (int k = 1; k < pieces; ++k) {
      polygon.push_back(point(c.at(c.start + edge.sweep * k / pieces)));
    }
  }
  return polygon;
}

Outline clipped(const Outline& outline, const Point& a, const Point& b) {
  const HalfPlane half = left_of(a, b);
  std::vector<Span> kept;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Span edge = edge_at(outline, i);
    if (edge.sweep == 0) {
      cut_straight(edge.from, edge.to, half, kept);
    } else {
      cut_arc(edge, half, kept);
    }
  }
  return joined(kept);
}

Outline clipped(const Outline& outline, const Polygon& convex) {
  Outline kept = outline;
  for (std::size_t k = 0; k < convex.size() && !kept.empty(); ++k) {
    kept = clipped(kept, convex[k], convex[(k + 1) % convex.size()]);
  }
  return kept;
}

Moments common_moments(const Outline& outline, const Polygon& polygon) {
  Moments sum;
  for (std::size_t i = 1; i + 1 < polygon.size(); ++i) {
    Polygon triangle{polygon[0], polygon[i], polygon[i + 1]};
    const Area turn = signed_area(triangle);
    if (turn == Area{}) continue;
    if (turn < Area{}) std::swap(triangle[1], triangle[2]);
    const Moments part = moments(clipped(outline, triangle));
    if (turn > Area{}) {
      sum += part;
    } else {
      sum -= part;
    }
  }
  return sum;
}

}  // namespace strikeoff
