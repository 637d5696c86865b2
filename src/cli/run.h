// SPDX-License-Identifier: MIT
#pragma once

#include <iosfwd>
#include <string>
#include <vector>

namespace strikeoff::cli {

/// Runs the program on these arguments (without its name). Results go to `out`, everything else
/// to `err`; `in` is read where a file is named "-". Returns the exit status.
[[nodiscard]] int run(const std::vector<std::string>& arguments, std::istream& in,
                      std::ostream& out, std::ostream& err);

}  // namespace strikeoff::cli
