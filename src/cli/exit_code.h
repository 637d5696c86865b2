// SPDX-License-Identifier: MIT
#pragma once

namespace strikeoff::cli {

/// What the program's exit status says; printed by --help.
enum ExitCode : int {
  planned = 0,          // nothing at `stop`
  planned_stop = 1,     // something at `stop`
  wrong_command = 2,    // the command line is wrong
  wrong_job = 3,        // the job file is wrong
  file_failed = 4,      // a file could not be read or written
  internal_error = 70,  // a bug in strikeoff (sysexits EX_SOFTWARE)
};

}  // namespace strikeoff::cli
