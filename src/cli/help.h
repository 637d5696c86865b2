// SPDX-License-Identifier: MIT
#pragma once

#include <CLI/CLI.hpp>
#include <string>

namespace strikeoff::cli {

/// The help of the program: what it is for, every command with its options, the exit statuses.
[[nodiscard]] std::string program_help(const CLI::App& app);

/// The help of one command.
[[nodiscard]] std::string command_help(const CLI::App& command);

}  // namespace strikeoff::cli
