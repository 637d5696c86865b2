// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/geometry.h"

namespace strikeoff {

/// What lies inside both a simple polygon and an upright rectangle: its parts, each a simple
/// polygon, anticlockwise; parts under 1 mm2 are left out. Parts only meet along the rectangle's
/// lines, so a saw that follows those lines frees them.
[[nodiscard]] std::vector<Polygon> parts_inside(const Polygon& polygon, const Rectangle& rectangle);

/// With x and y exchanged, and so with the corners in the other order to stay anticlockwise.
[[nodiscard]] Polygon turned(Polygon polygon);
[[nodiscard]] Rectangle turned(const Rectangle& rectangle);

/// A part of a line.
struct LineSpan {
  Length from, to;
};
/// Rising, without overlap.
using LineSpans = std::vector<LineSpan>;

[[nodiscard]] Length total(const LineSpans& spans);
[[nodiscard]] LineSpans joined(LineSpans spans);
[[nodiscard]] LineSpans common(const LineSpans& a, const LineSpans& b);
[[nodiscard]] LineSpans less(const LineSpans& a, const LineSpans& b);

/// Where the horizontal line at y, or just above it, is inside a polygon.
[[nodiscard]] LineSpans inside(const Polygon& polygon, Length y);
/// Where a place just left (or right) of the line from a through b is inside a polygon, as
/// distances from a. What lies within a micrometre of the line counts as on it.
[[nodiscard]] LineSpans beside(const Polygon& polygon, const Point& a, const Point& b, bool left);

}  // namespace strikeoff
