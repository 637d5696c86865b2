// SPDX-License-Identifier: MIT
#include <vector>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load_job.h"
#include "cli/page.h"
#include "render/text_sections.h"
#include "strikeoff/planner.h"

namespace strikeoff::cli {

ExitCode command_check(const PlanOptions& options, const Streams& streams) {
  const std::optional<Job> job = load_job(options, streams);
  if (!job) return wrong_job;
  Plan plan = make_plan(*job);
  const ExitCode status = has_stop(plan) ? planned_stop : planned;
  if (options.quiet) {
    std::erase_if(plan.checks, [](const Check& check) { return check.level == Level::ok; });
  }
  print(streams.out, text::checks(plan).str(page_for(options.look, streams)));
  return status;
}

}  // namespace strikeoff::cli
