// SPDX-License-Identifier: MIT
#include <filesystem>
#include <ostream>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load_job.h"
#include "strikeoff/draw.h"
#include "strikeoff/planner.h"

namespace strikeoff::cli {

ExitCode command_draw(const PlanOptions& options, const Streams& streams) {
  const std::optional<Job> job = load_job(options, streams);
  if (!job) return wrong_job;
  const Plan plan = make_plan(*job);
  const std::vector<Drawing> drawings = drawings_of(plan);
  std::string paths;
  for (const Drawing& drawing : drawings) {
    const std::string path = std::filesystem::path(options.output) / (drawing.name + ".svg");
    if (same_file(options.job, path)) {
      streams.err << "strikeoff: a drawing would overwrite the job file \"" << options.job
                  << "\"; name another directory after -o\n";
      return wrong_command;
    }
    paths += path + "\n";
  }
  make_directory(options.output);
  for (const Drawing& drawing : drawings) {
    write_file(std::filesystem::path(options.output) / (drawing.name + ".svg"), drawing.svg);
  }
  if (!options.quiet) print(streams.out, paths);
  return has_stop(plan) ? planned_stop : planned;
}

}  // namespace strikeoff::cli
