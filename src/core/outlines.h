// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/job.h"

namespace strikeoff {

/// The slab's outline before its corners are rounded or cut: its base moved out by each side's
/// overhang, in the base frame. Side k of the slab is its edge k.
[[nodiscard]] Polygon sharp_outline(const Slab& slab);

/// The slab's edge seen from above, corner cuts and all.
[[nodiscard]] Outline slab_edge(const Slab& slab);

/// The panel's rim, likewise, with sharp corners. Meaningless for a slab without a panel.
[[nodiscard]] Polygon panel_outline(const Slab& slab);

/// What the inner faces of the slab's aprons enclose: sides without one are as they are in
/// `sharp_outline`, the others a `strip` past the base.
[[nodiscard]] Polygon inside_aprons(const Slab& slab, Length strip);

/// An opening's edge in the base frame: `edge` is the slab's, whose bounding box it is measured in.
[[nodiscard]] Outline opening_edge(const Opening& opening, const Outline& edge);

/// True when the edge of some side goes on below the base's top.
[[nodiscard]] bool has_apron(const Slab& slab);

}  // namespace strikeoff
