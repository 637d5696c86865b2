// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

#include "strikeoff/geometry.h"

namespace strikeoff {

/// Two slices that touch along a horizontal line.
struct Contact {
  std::size_t below, above;
  Length overlap;
};

struct Slices {
  std::vector<Rectangle> rectangles;  // from low to high, then left to right
  std::vector<Contact> contacts;
};

/// A right-angled polygon cut along every horizontal line through a corner, slices of one width
/// joined again: at most as many rectangles as corners. Quadratic in the corners.
[[nodiscard]] Slices slice(const Polygon& polygon);

/// The slices with `gap` left open at each contact. The slice that is covered by its neighbour's
/// whole side is the one shortened, so that nothing else of the area is lost; where neither
/// covers the other the lower one is. A slice lower than its gaps ends up with no depth or less.
[[nodiscard]] std::vector<Rectangle> part_slices(const Slices& slices, Length gap);

}  // namespace strikeoff
