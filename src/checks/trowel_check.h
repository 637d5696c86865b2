// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Whether those who finish can go twice over every zone after it is stiff and before its final
/// set; one of the pour's checks.
[[nodiscard]] Check trowelling(const Job& job, const Plan& plan);

}  // namespace strikeoff
