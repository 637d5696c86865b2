// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Screws, sealants, tapes, battens and what else is bought by the pack beside mix, boards and
/// sheets: only what the job needs.
[[nodiscard]] std::vector<Material> list_supplies(const Job& job, const Catalogue& catalogue,
                                                  const Plan& plan);

}  // namespace strikeoff
