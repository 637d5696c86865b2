// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// What sanding and sealing of the slabs' tops and visible edges take.
[[nodiscard]] FinishPlan plan_finish(const Job& job, const Catalogue& catalogue,
                                     const std::vector<SlabPlan>& slabs);

}  // namespace strikeoff
