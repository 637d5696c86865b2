// SPDX-License-Identifier: MIT
#pragma once

#include <string>
#include <vector>

namespace strikeoff::cli {

/// A word of the command line and what it means.
struct HelpLine {
  std::string word, meaning;
};

struct CommandHelp {
  std::string call;  // "draw JOB -o DIR"
  std::string meaning;
  std::vector<HelpLine> arguments;  // but files: those are the same for all commands
  std::vector<HelpLine> options;    // its own
  std::vector<HelpLine> shared;     // those of several commands
};

/// The help of the program: what it is for, every command with its options, the exit statuses.
[[nodiscard]] std::string program_help(const std::vector<CommandHelp>& commands,
                                       const HelpLine& help_option);

/// The help of one command.
[[nodiscard]] std::string command_help(const CommandHelp& command);

}  // namespace strikeoff::cli
