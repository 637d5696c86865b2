// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <vector>

#include "pour/pour_model.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Why each open value of the job (but the finishers) is as in `best`: what it comes to, and what
/// the next smaller and the next larger one would.
[[nodiscard]] std::vector<SettledValue> reasons(const Job& job, const Setup& best,
                                                const PourModel& model);

/// Nothing: how many it takes is not known, and one stands in.
[[nodiscard]] SettledValue finishers_choice(std::optional<int> people);

}  // namespace strikeoff
