// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "pour/region.h"
#include "strikeoff/geometry.h"

namespace strikeoff {

/// The direction u of a region in the base frame, of length 1; v is a quarter turn to its left.
struct Direction {
  double x = 1, y = 0;
};

[[nodiscard]] Corner in_frame(const Point& point, const Direction& u);
[[nodiscard]] Point out_of_frame(const Corner& corner, const Direction& u);
/// Corners are settled on a grid of 1/64 nm unless u runs along x or y, so that corners equally
/// far along stay so.
[[nodiscard]] Ring ring_of(const Polygon& polygon, const Direction& u);

/// The outlines of a region in the base frame: trapezoids that follow one another make one. Simple,
/// anticlockwise, corners that coincide or lie on a straight line once.
[[nodiscard]] std::vector<Polygon> outlines_of(const Region& region, const Direction& u);

/// The same corners from the leftmost, of several the lowest.
[[nodiscard]] Polygon from_lower_left(Polygon polygon);

}  // namespace strikeoff
