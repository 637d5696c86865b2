// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "cli/commands.h"
#include "strikeoff/job.h"

namespace strikeoff::cli {

/// The job of the file that is named; nothing when it is wrong: then its problems have been
/// printed to `err` in the form that was asked for. Throws FileError.
[[nodiscard]] std::optional<Job> load_job(const PlanOptions& options, const Streams& streams);

}  // namespace strikeoff::cli
