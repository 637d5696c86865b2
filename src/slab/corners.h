// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

/// What the strips of one side add, at each end, to the side of the outline they follow (negative:
/// they stop short), and the saw's reading at the ends of its edge strip. Left is as seen from
/// outside, which is where an anticlockwise side begins.
struct SideEnds {
  Length edge_left, edge_right;
  Length soffit_left, soffit_right;
  double left_cut_deg = 0, right_cut_deg = 0;
};

/// The corner rules of `form_work`, one entry per side. The entries of walls mean nothing.
/// Soffits follow the style (`mitre`: as `through`, they always butt). Where that would leave a
/// side no soffit, as at a step shorter than the overhang, the slab's soffits go pinwheel, which
/// gives every side a strip longer than nothing and still fills the overhang exactly.
[[nodiscard]] std::vector<SideEnds> strip_ends(const Slab& slab, const Polygon& outline,
                                               CornerStyle style, Length strip_thickness);

}  // namespace strikeoff
