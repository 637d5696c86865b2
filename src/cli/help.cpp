// SPDX-License-Identifier: MIT
#include "cli/help.h"

#include <fmt/core.h>

#include <algorithm>
#include <string_view>

#include "render/text.h"

namespace strikeoff::cli {
namespace {

using text::Text;

constexpr std::string_view opening =
    R"(strikeoff plans the pour of a concrete slab that is cast where it stays: what to buy, what to
cut, how much water goes into which batch and when, and what could go wrong.

  strikeoff new > job.json         a starter job: change the values to yours
  strikeoff plan job.json          the plan

)";

constexpr const char* files = "  JOB is a file, or - for standard input; so is LOG.\n";

constexpr std::string_view exit_statuses = R"(
Exit status:
  0   planned, and nothing is at STOP
  1   planned, but something is at STOP: the plan as given would fail or hurt someone
  2   the command line is wrong
  3   the job file is wrong, or the log
  4   a file could not be read or written
  70  a bug in strikeoff
)";

/// A label in a column of its own and what it means.
Text line(std::size_t indent, std::size_t column, const std::string& label,
          const std::string& meaning) {
  const std::string first = std::string(indent, ' ') + label;
  const std::size_t width = std::max(column, first.size() + 2);
  return text::paragraph(fmt::format("{:<{}}", first, width), meaning);
}

Text lines(std::size_t indent, const std::vector<HelpLine>& words) {
  Text result;
  for (const HelpLine& of : words) result += line(indent, 34, of.word, of.meaning);
  return result;
}

/// The shared options of all commands, each once.
std::vector<HelpLine> shared_by(const std::vector<CommandHelp>& commands) {
  std::vector<HelpLine> all;
  for (const CommandHelp& command : commands) {
    for (const HelpLine& option : command.shared) {
      const bool told = std::any_of(
          all.begin(), all.end(), [&](const HelpLine& other) { return other.word == option.word; });
      if (!told) all.push_back(option);
    }
  }
  return all;
}

}  // namespace

std::string program_help(const std::vector<CommandHelp>& commands, const HelpLine& help_option) {
  Text result = std::string(opening) + "Commands:\n";
  for (const CommandHelp& command : commands) {
    result += line(2, 19, command.call, command.meaning);
    result += lines(4, command.arguments) + lines(4, command.options);
  }
  result +=
      "\nOptions of commands that read a job or print text:\n" + lines(2, shared_by(commands));
  result += "\n" + Text(files);
  result += lines(2, {help_option, {"--version", "the version"}});
  return (result + std::string(exit_statuses)).str();
}

std::string command_help(const CommandHelp& command) {
  Text result = text::paragraph("strikeoff ", command.call + " [options]") + "\n" +
                text::paragraph("  ", command.meaning) + "\n";
  result += lines(4, command.arguments) + lines(4, command.options) + lines(4, command.shared);
  return result.str();
}

}  // namespace strikeoff::cli
