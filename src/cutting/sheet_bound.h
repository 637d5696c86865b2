// SPDX-License-Identifier: MIT
#pragma once

#include <utility>
#include <vector>

#include "cutting/guillotine.h"

namespace strikeoff {

/// A cost and a number of sheets that no plan of the pieces on these sheets can beat: by area,
/// and by the number that dual feasible functions ask for (`boards_bound`).
[[nodiscard]] std::pair<std::int64_t, int> bounds_of(const std::vector<CutSheet>& sheets,
                                                     const GuillotineProblem& problem);

}  // namespace strikeoff
