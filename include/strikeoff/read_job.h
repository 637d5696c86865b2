// SPDX-License-Identifier: MIT
#pragma once

#include <optional>
#include <string_view>
#include <vector>

#include "strikeoff/catalogue.h"
#include "strikeoff/diagnostic.h"
#include "strikeoff/job.h"

namespace strikeoff {

/// What became of a job file: a job, or the problems that prevent one, in file order.
struct ReadResult {
  std::optional<Job> job;
  std::vector<Diagnostic> diagnostics;
};

/// Reads a job file (JSON, with // and /* */ comments). A syntax error is reported alone;
/// otherwise every problem is. Bounded: texts over 4 MiB, deeper than 32 levels, or with more
/// than 1000 slabs, corners, openings or list entries are refused.
[[nodiscard]] ReadResult read_job(std::string_view text,
                                  const Catalogue& catalogue = shipped_catalogue());

/// A commented starter job that `read_job` accepts.
[[nodiscard]] std::string_view starter_job();

/// The published JSON Schema (2020-12) of the job file and of the plan file.
[[nodiscard]] std::string_view job_schema();
[[nodiscard]] std::string_view plan_schema();

}  // namespace strikeoff
