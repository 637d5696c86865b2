// SPDX-License-Identifier: MIT
#include "strikeoff/outline.h"

#include <algorithm>
#include <array>
#include <cmath>
#include <numbers>
#include <optional>

namespace strikeoff {
namespace {

constexpr double pi = std::numbers::pi;

/// One edge with both its ends, in metres from the origin.
struct ArcSpan {
  double x0, y0, x1, y1, sweep;
};

ArcSpan edge_at(const Outline& outline, std::size_t i) {
  const OutlineEdge& edge = outline[i];
  const Point& to = outline[(i + 1) % outline.size()].from;
  return {edge.from.x.in_m(), edge.from.y.in_m(), to.x.in_m(), to.y.in_m(), edge.sweep};
}

/// The circle an arc lies on, and where on it the arc begins.
struct Circle {
  double x, y, r, start;
};

Circle circle_of(const ArcSpan& e) {
  const double dx = e.x1 - e.x0, dy = e.y1 - e.y0, chord = std::hypot(dx, dy);
  // The centre lies left of the chord by (c/2) cot(sweep/2); at half a turn it is on the chord.
  const double cotangent = std::cos(e.sweep / 2) / std::sin(e.sweep / 2);
  const double x = (e.x0 + e.x1) / 2 - dy / 2 * cotangent;
  const double y = (e.y0 + e.y1) / 2 + dx / 2 * cotangent;
  return {x, y, chord / (2 * std::abs(std::sin(e.sweep / 2))), std::atan2(e.y0 - y, e.x0 - x)};
}

/// Of the triangle from the origin to an edge's chord.
void add_triangle(const ArcSpan& e, Moments& m) {
  const double twice = e.x0 * e.y1 - e.x1 * e.y0;
  m.one += twice / 2;
  m.x += twice * (e.x0 + e.x1) / 6;
  m.y += twice * (e.y0 + e.y1) / 6;
  m.xx += twice * (e.x0 * e.x0 + e.x0 * e.x1 + e.x1 * e.x1) / 12;
  m.yy += twice * (e.y0 * e.y0 + e.y0 * e.y1 + e.y1 * e.y1) / 12;
  m.xy += twice * (2 * e.x0 * e.y0 + e.x0 * e.y1 + e.x1 * e.y0 + 2 * e.x1 * e.y1) / 24;
}

/// Of the circular segment between an arc and its chord, negative where the arc bulges inwards.
/// Sector less triangle, about the centre with u along the arc's bisector and v across it.
void add_segment(const ArcSpan& e, Moments& m) {
  const Circle c = circle_of(e);
  const double a = std::abs(e.sweep) / 2, s = std::sin(a), k = std::cos(a), r2 = c.r * c.r;
  const double sign = e.sweep > 0 ? 1 : -1;
  const double one = sign * r2 * (a - s * k);
  const double u = sign * r2 * c.r * 2 / 3 * s * s * s;
  const double uu = sign * r2 * r2 * ((a + s * k) / 4 - s * k * k * k / 2);
  const double vv = sign * r2 * r2 * ((a - s * k) / 4 - s * s * s * k / 6);
  const double middle = c.start + e.sweep / 2, ux = std::cos(middle), uy = std::sin(middle);
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
  return edge_length({a, b}, 0) < same_corner;
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

/// An edge whose end is kept beside it, for outlines being cut.
struct KeptEdge {
  Point from, to;
  double sweep;
};

Outline joined(const std::vector<KeptEdge>& kept) {
  Outline outline;
  for (std::size_t i = 0; i < kept.size(); ++i) {
    outline.push_back({kept[i].from, kept[i].sweep});
    if (!(kept[(i + 1) % kept.size()].from == kept[i].to)) outline.push_back({kept[i].to, 0});
  }
  return outline;
}

/// Signed distance to the left of a line, in metres.
struct HalfPlane {
  double x, y, nx, ny;  // a point and the unit normal to the left
  [[nodiscard]] double at(double px, double py) const { return (px - x) * nx + (py - y) * ny; }
};

Point point_m(double x, double y) {
  return {Length::m(x), Length::m(y)};
}

void cut_straight(const Point& a, const Point& b, const HalfPlane& line,
                  std::vector<KeptEdge>& kept) {
  const double da = line.at(a.x.in_m(), a.y.in_m()), db = line.at(b.x.in_m(), b.y.in_m());
  if (da >= 0 && db >= 0) {
    kept.push_back({a, b, 0});
  } else if (da > 0 || db > 0) {
    const double t = da / (da - db);
    const Point crossing{a.x + (b.x - a.x) * t, a.y + (b.y - a.y) * t};
    kept.push_back(da > 0 ? KeptEdge{a, crossing, 0} : KeptEdge{crossing, b, 0});
  }
}

void cut_arc(const Point& a, const Point& b, double sweep, const HalfPlane& line,
             std::vector<KeptEdge>& kept) {
  const Circle c = circle_of({a.x.in_m(), a.y.in_m(), b.x.in_m(), b.y.in_m(), sweep});
  const double distance = line.at(c.x, c.y);
  std::vector<double> shares{0, 1};
  if (std::abs(distance) < c.r) {
    // On the arc the distance is that of the centre + r cos(angle - angle of the normal).
    const double normal = std::atan2(line.ny, line.nx), half = std::acos(-distance / c.r);
    for (const double angle : {normal + half, normal - half}) {
      const std::optional<double> along = turned_to(angle, c, sweep);
      if (along) shares.push_back(*along / std::abs(sweep));
    }
    std::sort(shares.begin(), shares.end());
  }
  const auto on_arc = [&](double share) {
    const double angle = c.start + sweep * share;
    return std::pair{c.x + c.r * std::cos(angle), c.y + c.r * std::sin(angle)};
  };
  const auto point_at = [&](double share) {
    if (share == 0) return a;
    if (share == 1) return b;
    const auto [x, y] = on_arc(share);
    return point_m(x, y);
  };
  // A piece is on one side of the line; where it touches the line, one of three points tells.
  const auto is_left = [&](double from, double to) {
    double farthest = 0;
    for (const double part : {0.25, 0.5, 0.75}) {
      const auto [x, y] = on_arc(from + (to - from) * part);
      const double left = line.at(x, y);
      if (std::abs(left) > std::abs(farthest)) farthest = left;
    }
    return farthest > 0;
  };
  for (std::size_t i = 0; i + 1 < shares.size(); ++i) {
    if (!is_left(shares[i], shares[i + 1])) continue;
    kept.push_back(
        {point_at(shares[i]), point_at(shares[i + 1]), sweep * (shares[i + 1] - shares[i])});
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
    const ArcSpan edge = edge_at(outline, i);
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
    const ArcSpan edge = edge_at(outline, i);
    if (edge.sweep != 0) {
      sum += Length::m(circle_of(edge).r * std::abs(edge.sweep));
    } else {
      sum += edge_length({outline[i].from, outline[(i + 1) % outline.size()].from}, 0);
    }
  }
  return sum;
}

Rectangle bounding_box(const Outline& outline) {
  Polygon extremes;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    extremes.push_back(outline[i].from);
    const ArcSpan edge = edge_at(outline, i);
    if (edge.sweep == 0) continue;
    const Circle c = circle_of(edge);
    for (int quarter = 0; quarter < 4; ++quarter) {
      if (!turned_to(quarter * pi / 2, c, edge.sweep)) continue;
      const std::array<double, 4> cosine{1, 0, -1, 0}, sine{0, 1, 0, -1};
      const auto q = static_cast<std::size_t>(quarter);
      extremes.push_back(point_m(c.x + c.r * cosine[q], c.y + c.r * sine[q]));
    }
  }
  return bounding_box(extremes);
}

Point centroid(const Moments& m) {
  return point_m(m.x / m.one, m.y / m.one);
}

Polygon chords(const Outline& outline, Length sagitta) {
  Polygon polygon;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    polygon.push_back(outline[i].from);
    const ArcSpan edge = edge_at(outline, i);
    if (edge.sweep == 0) continue;
    const Circle c = circle_of(edge);
    // A chord over the angle a rises r (1 - cos(a/2)) = 2 r sin2(a/4); over half a turn at most.
    const double most = 4 * std::asin(std::sqrt(std::min(0.5, sagitta.in_m() / (2 * c.r))));
    const int pieces = std::max(1, static_cast<int>(std::ceil(std::abs(edge.sweep) / most)));
    for (int k = 1; k < pieces; ++k) {
      const double angle = c.start + edge.sweep * k / pieces;
      polygon.push_back(point_m(c.x + c.r * std::cos(angle), c.y + c.r * std::sin(angle)));
    }
  }
  return polygon;
}

Outline clipped(const Outline& outline, const Point& a, const Point& b) {
  const double dx = (b.x - a.x).in_m(), dy = (b.y - a.y).in_m(), length = std::hypot(dx, dy);
  const HalfPlane line{a.x.in_m(), a.y.in_m(), -dy / length, dx / length};
  std::vector<KeptEdge> kept;
  for (std::size_t i = 0; i < outline.size(); ++i) {
    const Point &from = outline[i].from, &to = outline[(i + 1) % outline.size()].from;
    if (outline[i].sweep == 0) {
      cut_straight(from, to, line, kept);
    } else {
      cut_arc(from, to, outline[i].sweep, line, kept);
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
