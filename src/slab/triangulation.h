// SPDX-License-Identifier: MIT
#pragma once

#include <cstddef>
#include <vector>

#include "core/vec.h"

namespace strikeoff {

/// Corners by their numbers, anticlockwise.
using Ring = std::vector<std::size_t>;

/// The corners of the convex hull; a spot within a micrometre of a side is none.
[[nodiscard]] Ring hull_of(const std::vector<Vec>& spots);

/// The Delaunay triangulation, its triangles joined to cells where they have one circle: one
/// through three of the corners that passes all of them within 1 mm.
struct Cells {
  std::vector<Vec> spots;   // within 1 mm of a side of the hull: moved onto it
  std::vector<Ring> rings;  // with more than three corners all turn left about their mean
  Ring hull;                // with the spots along its sides
};

/// Whatever the order, mirrored or turned, the same spots make the same cells.
/// Precondition: three spots and more, at least 2 mm apart, not within 1 mm of one line.
[[nodiscard]] Cells delaunay_cells(std::vector<Vec> spots);

}  // namespace strikeoff
