// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "strikeoff/catalogue.h"
#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// Where a fact of the job comes from, as one sentence: "the job, /mix/bag", "assumption: …",
/// "chosen by the plan: …", "the catalogue's rapid-fine-48lb: invented".
[[nodiscard]] std::string origin_of(const std::string& pointer, const Job& job,
                                    const std::vector<SettledValue>& choices,
                                    const Catalogue& catalogue);

}  // namespace strikeoff
