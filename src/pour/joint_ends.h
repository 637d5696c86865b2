// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Where a place of a slab is found with a tape: on the side nearest to it, of the slab or of one of
/// its openings, from the nearer of that side's neighbours; inside the slab square in from the
/// slab's nearest side. A cut or rounded corner counts for the sides beside it, an opening for the
/// rectangle it fits in.
[[nodiscard]] JointEnd joint_end(const Slab& slab, const SlabPlan& shape, const Point& place);

/// Sets the ends of every joint but those between lifts.
void name_ends(const std::vector<Slab>& slabs, const std::vector<SlabPlan>& shapes,
               std::vector<Joint>& joints);

}  // namespace strikeoff
