// SPDX-License-Identifier: MIT
#include "cli/commands.h"
#include "cli/files.h"
#include "strikeoff/pour_log.h"
#include "strikeoff/read_job.h"

namespace strikeoff::cli {

ExitCode command_schema(std::string_view what, const Streams& streams) {
  print(streams.out, std::string(what == "job"    ? job_schema()
                                 : what == "plan" ? plan_schema()
                                                  : log_schema()));
  return planned;
}

}  // namespace strikeoff::cli
