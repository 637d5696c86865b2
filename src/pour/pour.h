// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

struct Pour {
  PourPlan plan;
  std::vector<Batch> batches;
  double retarder = 0;  // doses per bag chosen for an "auto" retarder
};

/// The pour of equal batches by the timetable with the least worst edge wait. The edge wait of a
/// batch is the time from its contact until the last batch that touches it is placed; the plan is
/// feasible when usable share x working time covers the worst edge wait and every batch's own age,
/// with the margin asked for (tolerance 1e-9 min). An "auto" retarder gets the least dose, in its
/// steps and never above its most, that makes it so; when none does it gets the largest it may
/// have.
[[nodiscard]] Pour plan_pour(const Job& job, const std::vector<SlabPlan>& slabs,
                             const MixPlan& mix);

}  // namespace strikeoff
