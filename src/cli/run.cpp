// SPDX-License-Identifier: MIT
#include "cli/run.h"

#include <exception>
#include <ostream>

#include "cli/command_line.h"
#include "cli/files.h"

namespace strikeoff::cli {

int run(const std::vector<std::string>& arguments, std::istream& in, std::ostream& out,
        std::ostream& err) {
  const Streams streams{in, out, err};
  try {
    return run_line(arguments, streams);
  } catch (const FileError& error) {
    err << "strikeoff: " << error.what() << "\n";
    return file_failed;
  } catch (const std::exception& error) {
    err << "strikeoff " STRIKEOFF_VERSION ": sorry, this is a bug in strikeoff (" << error.what()
        << "); please report it with the job file\n";
    return internal_error;
  }
}

}  // namespace strikeoff::cli
