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
  std::string text = text::checks(plan);
  if (text.starts_with("\n")) text.erase(0, 1);  // the line that parts it from a section before
  print(streams.out, text);
  return has_stop(plan) ? planned_stop : planned;
}

}  // namespace strikeoff::cli
