// SPDX-License-Identifier: MIT
#pragma once

#include <CLI/CLI.hpp>
#include <string>

#include "cli/commands.h"

namespace strikeoff::cli {

/// The options that several commands share are described once in the help.
inline constexpr const char* shared_options = "Shared";

/// The command line as CLI11 reads it: every command and option with its description, and where
/// their values go.
struct CommandLine {
  CLI::App app{"", "strikeoff"};
  PlanOptions plan;  // of plan, check and draw
  OddsArguments odds;
  ResumeArguments resume;
  WhyArguments why;
  ListArguments list;
  std::string schema;
  CLI::App *plan_command, *check_command, *draw_command, *odds_command, *resume_command,
      *why_command, *new_command, *list_command, *schema_command;

  CommandLine();
  CommandLine(const CommandLine&) = delete;
  CommandLine& operator=(const CommandLine&) = delete;
};

}  // namespace strikeoff::cli
