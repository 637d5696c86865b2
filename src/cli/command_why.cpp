// SPDX-License-Identifier: MIT
#include <ostream>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load_job.h"
#include "cli/page.h"
#include "strikeoff/planner.h"
#include "strikeoff/render.h"
#include "strikeoff/why.h"

namespace strikeoff::cli {

ExitCode command_why(const WhyArguments& arguments, const Streams& streams) {
  const PlanOptions& options = arguments.plan;
  const std::optional<Job> job = load_job(options, streams);
  if (!job) return wrong_job;
  const Plan plan = make_plan(*job);
  const bool as_json = options.format == "json";
  const auto show = [&](const auto& answer) {
    print(streams.out,
          as_json ? render_json(answer) : render_text(answer, page_for(options.look, streams)));
    return planned;
  };
  if (arguments.name.empty()) return show(explainable(plan));
  const WhyResult why = explain(*job, plan, arguments.name);
  if (why.explanation) return show(*why.explanation);
  streams.err << "strikeoff: " << why.problem << "\n";
  return wrong_command;
}

}  // namespace strikeoff::cli
