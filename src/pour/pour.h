// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "pour/pour_model.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

struct Pour {
  PourPlan plan;
  std::vector<Batch> batches;
  double retarder = 0;  // doses per bag chosen for an "auto" retarder; tapered: of the last batch
};

/// The pour of equal batches by the timetable with the least worst edge wait. The edge wait of a
/// batch is the time from its contact until the last batch that touches it is placed; the plan is
/// feasible when usable share x working time covers the worst edge wait and every batch's own age,
/// with the margin asked for (tolerance 1e-9 min). An "auto" retarder gets the least dose, in its
/// steps and never above its most, that makes it so; when none does it gets the largest it may
/// have. A tapered one has that dose in the last batch and more before it (`tapered_doses`). The
/// model may be of the same job before its open values were settled.
[[nodiscard]] Pour plan_pour(const Job& job, const MixPlan& mix, const PourModel& model);
/// The same with a model of its own, and with the ends of the joints named (`name_ends`).
[[nodiscard]] Pour plan_pour(const Job& job, const std::vector<SlabPlan>& slabs,
                             const MixPlan& mix);

/// The zones of a job's slabs can be cut with this.
[[nodiscard]] ZoneCutter zone_cutter(const Job& job, const std::vector<SlabPlan>& slabs);

}  // namespace strikeoff
