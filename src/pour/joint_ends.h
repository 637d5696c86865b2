// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Where a place on the edge of a slab or of one of its openings is found with a tape: on the side
/// nearest to it, from the nearer of its two neighbours. A cut or rounded corner counts for the
/// sides beside it, an opening for the rectangle it fits in. Nothing for a place inside the slab.
[[nodiscard]] std::optional<JointEnd> joint_end(const Slab& slab, const SlabPlan& shape,
                                                const Point& place);

/// Sets the ends of every joint from edge to edge.
void name_ends(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes,
               std::vector<Joint>& joints);

}  // namespace strikeoff
