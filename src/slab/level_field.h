// SPDX-License-Identifier: MIT
#pragma once

#include <span>

#include "slab/field.h"
#include "strikeoff/job.h"

namespace strikeoff {

/// How low the base lies below its highest reading, place by place, from level readings:
/// three give their plane and four at the corners of a convex quadrilateral a bilinear surface,
/// both of which go on beyond the readings; more (or four with one inside the triangle of the
/// others) are joined by triangles, and beyond their hull its nearest point holds.
/// Readings closer than 2 mm count as one, their mean. Flat without readings or with equal ones.
/// Precondition: none, or three and more not in one line.
[[nodiscard]] Field level_field(std::span<const LevelReading> readings, const Point& origin);

}  // namespace strikeoff
