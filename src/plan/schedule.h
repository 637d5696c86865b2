// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// The whole job in order, from the day before to first use; minute 0 is the first water contact.
/// Reads the plan's slabs, mix, batches, pour and cut list.
[[nodiscard]] std::vector<Task> make_schedule(const Job& job, const Plan& plan);

}  // namespace strikeoff
