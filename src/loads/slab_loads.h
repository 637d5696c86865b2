// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// A grown person with clothes and tools. Assumption.
inline constexpr Mass person_mass = kilograms(75);

/// What a slab weighs on its base, on each support and on the day of the pour, and how its worst
/// overhang bends. On the pour day the fresh slab, the heaviest batch and everyone who places lie
/// on the base at once, and all of the batch and the people on any one support: the worst they can
/// do. Neither bucket nor panel is counted, whose weights are not known.
/// Precondition: the plan's slabs are measured and weighed, its batches and pour planned. `job` is settled.
[[nodiscard]] SlabLoads load_slab(const Job& job, const Plan& plan, std::size_t slab);

}  // namespace strikeoff
