// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/job.h"

namespace strikeoff {

/// The slab's edge seen from above: its base moved out by each side's overhang, in the base frame.
[[nodiscard]] Polygon slab_outline(const Slab& slab);

/// The panel's rim, likewise. Meaningless for a slab without a panel.
[[nodiscard]] Polygon panel_outline(const Slab& slab);

}  // namespace strikeoff
