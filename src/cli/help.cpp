// SPDX-License-Identifier: MIT
#include "cli/help.h"

#include <fmt/format.h>

#include <algorithm>
#include <string_view>

#include "cli/command_line.h"
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

/// "plan JOB", "why JOB [NAME]", "draw JOB -o DIR".
std::string call(const CLI::App& command) {
  std::string words = command.get_name();
  for (const CLI::Option* option : command.get_options()) {
    if (option->get_positional()) {
      const std::string name = option->get_name(true);
      words += option->get_required() ? " " + name : " [" + name + "]";
    } else if (option->get_required()) {
      words += " -" + option->get_snames().front() + " " + option->get_type_name();
    }
  }
  return words;
}

/// "-o, --output FILE".
std::string label(const CLI::Option& option) {
  std::string words;
  for (const std::string& name : option.get_snames()) words += "-" + name + ", ";
  for (const std::string& name : option.get_lnames()) words += "--" + name + " ";
  if (option.get_items_expected_max() > 0) words += option.get_type_name();
  while (words.ends_with(" ")) words.pop_back();
  return words;
}

bool is_shared(const CLI::Option& option) {
  return option.get_group() == shared_options;
}

/// What a command is called with, but files: those are the same for all commands.
Text arguments_of(const CLI::App& command) {
  Text result;
  for (const CLI::Option* option : command.get_options()) {
    const std::string name = option->get_name(true);
    if (option->get_positional() && name != "JOB" && name != "LOG") {
      result += line(4, 34, name, option->get_description());
    }
  }
  return result;
}

Text options_of(const CLI::App& command, bool shared) {
  Text result;
  for (const CLI::Option* option : command.get_options()) {
    if (option->get_positional() || option == command.get_help_ptr()) continue;
    if (is_shared(*option) != shared) continue;
    result += line(4, 34, label(*option), option->get_description());
  }
  return result;
}

/// The shared options of all commands, each once.
Text shared_by(const CLI::App& app) {
  Text result;
  std::vector<std::string> told;
  for (const CLI::App* command : app.get_subcommands({})) {
    for (const CLI::Option* option : command->get_options()) {
      const std::string name = option->get_name();
      if (!is_shared(*option) || std::find(told.begin(), told.end(), name) != told.end()) continue;
      told.push_back(name);
      result += line(2, 34, label(*option), option->get_description());
    }
  }
  return result;
}

}  // namespace

std::string program_help(const CLI::App& app) {
  Text result = std::string(opening) + "Commands:\n";
  for (const CLI::App* command : app.get_subcommands({})) {
    result += line(2, 19, call(*command), command->get_description());
    result += arguments_of(*command) + options_of(*command, false);
  }
  result += "\nOptions of commands that read a job or print text:\n" + shared_by(app);
  result += "\n" + Text(files);
  result += line(2, 34, label(*app.get_help_ptr()), app.get_help_ptr()->get_description());
  result += line(2, 34, "--version", "the version");
  return (result + std::string(exit_statuses)).str();
}

std::string command_help(const CLI::App& command) {
  Text result = text::paragraph("strikeoff ", call(command) + " [options]") + "\n" +
                text::paragraph("  ", command.get_description()) + "\n";
  result += arguments_of(command) + options_of(command, false) + options_of(command, true);
  return result.str();
}

}  // namespace strikeoff::cli
