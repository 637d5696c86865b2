// SPDX-License-Identifier: MIT
#include "cli/run.h"

#include "cli/exit_code.h"

namespace strikeoff::cli {

int run(const std::vector<std::string>&, std::istream&, std::ostream&, std::ostream&) {
  return wrong_command;
}

}  // namespace strikeoff::cli
