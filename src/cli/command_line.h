// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

#include "cli/commands.h"

namespace strikeoff::cli {

/// Runs the command these words ask for, or says what is wrong with them.
[[nodiscard]] ExitCode run_line(const std::vector<std::string>& arguments, const Streams& streams);

}  // namespace strikeoff::cli
