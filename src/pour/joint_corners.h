// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "strikeoff/plan.h"

namespace strikeoff {

// A slab cracks first where its edge or an opening turns into it; a joint that ends there helps the
// crack along (common practice, no source).

/// How far a joint's ends stay from such corners: twice the thickness, at least 100 mm
/// (assumption).
[[nodiscard]] Length corner_clearance(const SlabPlan& slab);

/// The re-entrant corners of the slab's edge and the corners of its openings; a corner rounded by
/// no more than the clearance is one still, in the middle of its arc.
[[nodiscard]] std::vector<Point> crack_corners(const SlabPlan& slab);

/// How near the joint ends to one of these corners, where that is nearer than the clearance.
[[nodiscard]] std::optional<Length> near_corner(const Polygon& joint,
                                                const std::vector<Point>& corners,
                                                Length clearance);

}  // namespace strikeoff
