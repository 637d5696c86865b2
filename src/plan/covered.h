// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// When the top is trowelled and can be covered, from the first water; where the bag does not say
/// when that begins, when the last batch is too hard for it; nothing where it says neither.
[[nodiscard]] std::optional<Duration> covered_at(const Job& job, const Plan& plan);

}  // namespace strikeoff
