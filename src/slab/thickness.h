// SPDX-License-Identifier: MIT
#pragma once

#include "slab/heights.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Where the slab is thinnest and thickest: T - p + low + rise over the panel and T + low + rise
/// beside it, openings left out. Of equal places the first on the panel, then on the edge, from
/// corner 1 on. An apron is not part of this thickness: it hangs below the slab.
struct ThicknessRange {
  ThicknessAt thinnest, thickest;
  Length least_over_panel;  // everywhere, where there is no panel
};

/// Arcs are followed by chords within 0.05 mm; all else is exact.
/// Precondition: the shape has its outlines and areas.
[[nodiscard]] ThicknessRange thickness_range(const Slab& slab, const SlabPlan& shape,
                                             const Heights& heights);

/// The greatest low under the slab's outline, likewise.
[[nodiscard]] HeightAt lowest_base(const Slab& slab, const SlabPlan& shape, const Heights& heights);

}  // namespace strikeoff
