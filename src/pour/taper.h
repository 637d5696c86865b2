// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"

namespace strikeoff {

/// The dose of the "auto" retarder in each batch, per bag: `last` in the last one, and before it as
/// much as makes batch i set with the last one: a working time of W_N + (contact_N - contact_i), in
/// steps and never above its most. `factor` is for temperature.
[[nodiscard]] std::vector<double> tapered_doses(const Job& job, Duration plain, double factor,
                                                const std::vector<Duration>& contacts, double last);

}  // namespace strikeoff
