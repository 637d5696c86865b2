// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "pour/pour_model.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

// Single changes to a pour, each by as much as it takes.

/// For a pour that does not work with this crew and mix, whose working time is known: what would
/// mend it, then what is not enough alone; the least trouble and cost first, at most 6. Empty for
/// one that works, and where nobody has a needed role. Nothing is open in the job; `joints` are
/// those of its plan.
[[nodiscard]] std::vector<Remedy> remedies(const Job& job, const PourModel& model,
                                           const std::vector<Joint>& joints);

/// For a pour that works: one more person, one more mixer, where edges then wait 6 s less or the
/// pour ends a minute earlier.
[[nodiscard]] std::vector<Remedy> changes(const Job& job, const PourModel& model);

}  // namespace strikeoff
