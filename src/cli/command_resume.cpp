// SPDX-License-Identifier: MIT
#include <ostream>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load_job.h"
#include "cli/page.h"
#include "strikeoff/render.h"
#include "strikeoff/resume.h"

namespace strikeoff::cli {

ExitCode command_resume(const ResumeArguments& arguments, const Streams& streams) {
  const PlanOptions& options = arguments.plan;
  if (options.job == "-" && arguments.log == "-") {
    streams.err << "strikeoff: job and log cannot both come from standard input; name a file for "
                   "one of them\n";
    return wrong_command;
  }
  const std::optional<Job> job = load_job(options, streams);
  if (!job) return wrong_job;
  const std::string text = read_file(arguments.log, streams.in);
  const LogResult result = read_log(text, *job);
  if (!result.log) {
    print_problems(result.diagnostics, arguments.log, text, options, streams);
    return wrong_job;
  }
  const Resume rest = resume(*job, shipped_catalogue(), *result.log);
  print(streams.out, options.format == "json" ? render_json(rest)
                                              : render_text(rest, page_for(options.look, streams)));
  return has_stop(rest) ? planned_stop : planned;
}

}  // namespace strikeoff::cli
