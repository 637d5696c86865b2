// SPDX-License-Identifier: MIT
#pragma once

#include <optional>

#include "cli/commands.h"
#include "strikeoff/diagnostic.h"
#include "strikeoff/job.h"

namespace strikeoff::cli {

/// The job of the file that is named; nothing when it is wrong: then its problems have been
/// printed to `err` in the form that was asked for. Throws FileError.
[[nodiscard]] std::optional<Job> load_job(const PlanOptions& options, const Streams& streams);

/// Prints the problems of a file to `err`, in the form that was asked for.
void print_problems(const std::vector<Diagnostic>& problems, const std::string& path,
                    const std::string& text, const PlanOptions& options, const Streams& streams);

}  // namespace strikeoff::cli
