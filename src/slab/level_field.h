// SPDX-License-Identifier: MIT
#pragma once

#include <span>

#include "slab/field.h"
#include "strikeoff/job.h"

namespace strikeoff {

/// How low the base lies below its highest reading, place by place, from level readings:
/// three give their plane and four at the corners of a convex quadrilateral a bilinear surface,
/// both of which go on beyond the readings; more (or four with one inside the triangle of the
/// others) are joined by Delaunay's triangles, readings on one circle within 1 mm by a fan about
/// their mean, and beyond their hull its nearest point holds. Their order does not matter. Flat
/// without readings or with equal ones.
/// Precondition: none, or three and more, at least 2 mm apart, not in one line.
[[nodiscard]] Field level_field(std::span<const LevelReading> readings, const Point& origin);

}  // namespace strikeoff
