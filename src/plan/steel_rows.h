// SPDX-License-Identifier: MIT
#pragma once

#include <vector>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// The steel to buy: bars by the length, one row for each diameter, and mesh by the area. Without a
/// price unless the job gives one for "reinforcing-bar" or "reinforcing-mesh", a metre or a square
/// metre of it (a foot or a square foot in US jobs). Fiber is bought as an additive.
[[nodiscard]] std::vector<Material> steel_rows(const Job& job, const Plan& plan);

}  // namespace strikeoff
