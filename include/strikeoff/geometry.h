// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <optional>
#include <span>
#include <utility>
#include <vector>

#include "strikeoff/quantity.h"

namespace strikeoff {

struct Point {
  Length x, y;
  bool operator==(const Point&) const = default;
};

/// Corners of a closed outline, in order, the first not repeated. Functions below take it
/// anticlockwise unless they say otherwise.
using Polygon = std::vector<Point>;

/// An upright rectangle by its lower left corner.
struct Rectangle {
  Point at;
  Length length;  // along x
  Length depth;   // along y
  bool operator==(const Rectangle&) const = default;
};

[[nodiscard]] Polygon corners_of(const Rectangle& rectangle);
[[nodiscard]] Area area(const Rectangle& rectangle);

/// Area by the shoelace formula: positive anticlockwise, negative clockwise.
[[nodiscard]] Area signed_area(const Polygon& polygon);
[[nodiscard]] Length perimeter(const Polygon& polygon);
[[nodiscard]] Length edge_length(const Polygon& polygon, std::size_t edge);
[[nodiscard]] Rectangle bounding_box(const Polygon& polygon);

/// So far along from one place towards another; exact along the axes.
[[nodiscard]] Point towards(const Point& from, const Point& to, Length by);

/// Where the polygon's boundary meets itself other than at the corner two edges share: the
/// first such pair of edges (0-based), or nothing when the polygon is simple.
[[nodiscard]] std::optional<std::pair<std::size_t, std::size_t>> self_contact(
    const Polygon& polygon);

/// True when every edge runs along x or y and neighbouring edges are perpendicular.
[[nodiscard]] bool is_right_angled(const Polygon& polygon);

/// True when the outline turns left (outwards) at this corner; false when it is re-entrant.
[[nodiscard]] bool is_convex_corner(const Polygon& polygon, std::size_t corner);

/// How an outline turns at a corner: positive to the left, outwards.
struct Turn {
  double radians = 0;
  double tan_half = 0;  // sin t/(1 + cos t), which is exact at a right angle
};
[[nodiscard]] Turn turn_at(const Polygon& polygon, std::size_t corner);

/// The polygon with edge k moved outwards by `outward[k]` (negative: inwards), neighbours meeting
/// at mitred corners. Corner k stays corner k. An edge that would turn round is not repaired:
/// see `swallowed_edge`.
[[nodiscard]] Polygon offset_edges(const Polygon& polygon, std::span<const Length> outward);

/// The first edge (0-based) that has no length or runs backwards after `offset_edges`.
[[nodiscard]] std::optional<std::size_t> swallowed_edge(const Polygon& before,
                                                        const Polygon& after);

/// The area common to a polygon and an upright rectangle, by clipping the polygon with the
/// rectangle's four half-planes (Sutherland and Hodgman, CACM 17, 1974).
[[nodiscard]] Area overlap(const Polygon& polygon, const Rectangle& rectangle);

/// True when the rectangle lies inside the polygon or touches it from inside.
[[nodiscard]] bool contains(const Polygon& polygon, const Rectangle& rectangle);

/// True when the point lies inside the polygon or on its boundary.
[[nodiscard]] bool contains(const Polygon& polygon, const Point& point);

/// The least distance between the boundaries of two polygons; 0 where they meet or cross.
[[nodiscard]] Length distance(const Polygon& a, const Polygon& b);
/// The least distance of a point from the boundary of a polygon, from inside as from outside.
[[nodiscard]] Length distance(const Point& point, const Polygon& polygon);

[[nodiscard]] bool overlaps(const Rectangle& a, const Rectangle& b);

}  // namespace strikeoff
