// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

struct Saw {
  Length kerf;
  Length end_trim;         // squared off each end of a board before the first part
  Reusable reusable = {};  // the least left-over listed
};

/// Cuts the parts from boards (ripped into full-length strips, then crosscut) and sheets
/// (guillotine). A part names its stock kind by role: backer panels come from `sheets`, parts
/// with a `stock` otherwise from `boards` like it: of its thickness, and sheet for rounded edges
/// only where it is such itself; parts without one are not cut here (an edge strip without one has
/// no room: it is unplaced). Sets each part's `stock` to what it is cut from. On-hand boards
/// go first; on-hand sheets where that saves one that is bought. Each total's `bound` is a number
/// of boards no plan can beat; `proven` says the plan meets it. What is left of boards and sheets
/// is listed where it is large enough to be used again.
[[nodiscard]] CutList cut_parts(std::vector<Part> parts, const std::vector<Stock>& boards,
                                const std::vector<Stock>& sheets,
                                const std::vector<OnHand>& on_hand, const Saw& saw);

}  // namespace strikeoff
