// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "loads/lifting.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// What people lift: bags from the floor to the mixer's lip, batches in buckets from the floor to
/// the form; and the kilograms of each person over the day. Reads the plan's mix, batches and pour;
/// without batches there are no lifts.
[[nodiscard]] HandlingPlan plan_handling(const Job& job, const Plan& plan);

/// The same bag from a stack at waist height, close to the mixer.
[[nodiscard]] Mass recommended_from_waist(const LiftPlan& bag);

/// The lesser of what the equation recommends and the job's own limit.
[[nodiscard]] Mass lift_limit(const LiftPlan& lift, const Limits& limits);

}  // namespace strikeoff
