// SPDX-License-Identifier: MIT
#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load_job.h"
#include "render/text_sections.h"
#include "strikeoff/planner.h"

namespace strikeoff::cli {

ExitCode command_check(const PlanOptions& options, const Streams& streams) {
  const std::optional<Job> job = load_job(options, streams);
  if (!job) return wrong_job;
  const Plan plan = make_plan(*job);
  print(streams.out, text::checks(plan).substr(1));  // without the empty line before a section
  return has_stop(plan) ? planned_stop : planned;
}

}  // namespace strikeoff::cli
