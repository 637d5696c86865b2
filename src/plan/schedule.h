// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// The whole job in order, from the day before to first use; minute 0 is the first water contact.
/// Reads the plan's slabs, mix, batches, pour and cut list.
[[nodiscard]] std::vector<Task> make_schedule(const Job& job, const Plan& plan);

/// Local date and time so long after the start, ISO 8601, to the second; the start has a time. A
/// change of summer time on the way is not known here, so it is not in it.
[[nodiscard]] std::string local_time(const StartDate& start, Duration after);

}  // namespace strikeoff
