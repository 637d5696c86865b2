// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "slab/marks.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Form parts of one slab and the lengths of form work they make up.
struct FormWork {
  std::vector<Part> parts;  // grouped: equal parts stand once, with their quantity
  FormQuantities quantities;
  std::vector<SidePlan> sides;
};

/// Soffit strips, edge strips, corner pieces and knock-outs of one slab, by the rules of corners.h,
/// with splices where a strip is longer than every board. `shape` is the slab as measured,
/// `fresh` the mix's density: screws, stakes and props stand as close as its push asks.
///
/// At a square corner between two formed sides one strip passes and one butts. `through`: the
/// longer side passes (equal: the lower edge number); `pinwheel`: the side that ends there;
/// `mitre`: both edge strips run to the long point, soffits still butt. With strip thickness s, at
/// a convex corner the passing edge strip is s longer, at a re-entrant one the butting strip is s
/// shorter. All other corners are mitred. Soffits fill the overhang of the sharp outline exactly.
///
/// A recess too narrow for its strips has an edge strip without a stock: there is no room for it,
/// and the cut list says so. Isolation strips have no stock either: a roll; nor have blocks and the
/// foam inside an apron. Props have no length either: it is measured where they stand.
[[nodiscard]] FormWork form_work(const Slab& slab, const SlabPlan& shape, const Forms& forms,
                                 Density fresh, MarkCounter& marks);

}  // namespace strikeoff
