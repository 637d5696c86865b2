// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string>

#include "strikeoff/job.h"
#include "strikeoff/plan.h"

namespace strikeoff {

/// The latest whole minute, local ISO 8601, at which the first water may go in so that the first
/// full use begins by the job's `ready_by`; a day without a time is its midnight. Reads the plan's
/// schedule. Nothing without `ready_by`, or where it is not known when the full use begins.
[[nodiscard]] std::optional<std::string> latest_start(const Job& job, const Plan& plan);

}  // namespace strikeoff
