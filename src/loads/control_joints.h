// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Joint spacing over thickness for a slab on the ground, by the largest grain: 24 under 3/4 in
/// (19 mm) or unknown, 30 from there on. 36, for stiff mixes, is not used: the bag's water makes
/// none. Portland Cement Association, as quoted; the same range as ACI 302.1R.
[[nodiscard]] double joint_factor(const Mix& mix);

/// Joints that part the box of a slab on the ground into equal panels: no side longer than
/// `joint_factor` thicknesses or 18 ft (ACI 302.1R), none longer than half of that more than half
/// as long again as it is wide; a quarter of the thickness deep.
[[nodiscard]] ControlJoints control_joints(const Slab& slab, const SlabPlan& plan, const Mix& mix);

/// A panel's longer side over its shorter one, at most; read, in pages on jointing that agree.
inline constexpr double longest_panel = 1.5;
/// ACI 302.1R as quoted.
inline constexpr Length most_joint_spacing = Length::inches(18 * 12);

}  // namespace strikeoff
