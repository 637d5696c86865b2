// SPDX-License-Identifier: MIT
#pragma once

#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// The job with every value it leaves open ("auto") as `make_plan` chooses it.
[[nodiscard]] Job settled_job(const Job& job);

/// The whole plan of a job. Same job, same plan, on any machine.
[[nodiscard]] Plan make_plan(const Job& job, const Catalogue& catalogue = shipped_catalogue());

}  // namespace strikeoff
