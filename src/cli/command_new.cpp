// SPDX-License-Identifier: MIT
#include "cli/commands.h"
#include "cli/files.h"
#include "strikeoff/read_job.h"

namespace strikeoff::cli {

ExitCode command_new(const Streams& streams) {
  print(streams.out, std::string(starter_job()));
  return planned;
}

}  // namespace strikeoff::cli
