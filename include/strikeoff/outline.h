// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <span>
#include <vector>

#include "strikeoff/geometry.h"

namespace strikeoff {

/// One edge of an outline, from its corner to that of the next edge: straight, or an arc of a
/// circle that turns by `sweep` radians, positive to the left (it bulges out of an anticlockwise
/// outline), at most half a turn.
struct OutlineEdge {
  Point from;
  double sweep = 0;
  bool operator==(const OutlineEdge&) const = default;
};

/// A closed outline of straight edges and arcs, anticlockwise.
using Outline = std::vector<OutlineEdge>;

[[nodiscard]] Outline outline_of(const Polygon& polygon);
/// A rectangle with all corners rounded; a square rounded by half its side is a circle.
/// Precondition: the radius is at most half the shorter side.
[[nodiscard]] Outline outline_of(const Rectangle& rectangle, Length corner_radius);

/// A corner of a polygon rounded off, or cut off straight.
struct CornerCut {
  std::size_t corner = 0;  // 0-based
  Length size;             // radius; or how far back along both sides the straight cut begins
  bool round = true;
  bool operator==(const CornerCut&) const = default;
};

/// How far along both its sides a cut corner begins: the size of a straight cut, and the tangent
/// length r tan(turn/2) of a radius.
[[nodiscard]] Length set_back(const Polygon& polygon, const CornerCut& cut);

/// The polygon with some corners cut; what is left of an edge under 1 nm is no edge any more.
/// Precondition: the cuts of one edge do not overlap.
[[nodiscard]] Outline with_corners(const Polygon& polygon, std::span<const CornerCut> cuts);

/// The integrals of 1, x, y, x2, xy and y2 over a plane region, about the origin of its frame, in
/// metres to the power that each needs. They add, so a hole subtracts.
struct Moments {
  double one = 0, x = 0, y = 0, xx = 0, xy = 0, yy = 0;
  Moments& operator+=(const Moments& other);
  Moments& operator-=(const Moments& other);
};

/// Exact, arcs included: Green's theorem over the chords, and the closed forms of the circular
/// segment between each chord and its arc.
[[nodiscard]] Moments moments(const Outline& outline);
[[nodiscard]] Area area(const Outline& outline);
[[nodiscard]] Length perimeter(const Outline& outline);
[[nodiscard]] Rectangle bounding_box(const Outline& outline);
[[nodiscard]] Point centroid(const Moments& moments);

/// The outline with each arc drawn by the fewest equal chords that stay within `sagitta` of it,
/// their ends on the arc: inside an arc that bulges out, beyond one that bulges in.
[[nodiscard]] Polygon chords(const Outline& outline, Length sagitta);
/// How closely drawn outlines follow their arcs.
inline constexpr Length drawn_within = Length::mm(0.05);

/// What lies left of the line from a through b, which must differ. Parts that fall asunder stay
/// joined by edges along that line that enclose nothing, so that areas and moments are right
/// (Sutherland and Hodgman, CACM 17, 1974, with arcs split where they cross the line).
[[nodiscard]] Outline clipped(const Outline& outline, const Point& a, const Point& b);
/// What lies inside a convex polygon, likewise.
[[nodiscard]] Outline clipped(const Outline& outline, const Polygon& convex);
/// Moments of what an outline and any simple polygon have in common: the polygon as a fan of
/// triangles, each with the sign of its turn.
[[nodiscard]] Moments common_moments(const Outline& outline, const Polygon& polygon);

}  // namespace strikeoff
