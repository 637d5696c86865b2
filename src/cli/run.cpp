// SPDX-License-Identifier: MIT
#include "cli/run.h"

#include <fmt/format.h>

#include <algorithm>
#include <exception>
#include <optional>
#include <ostream>

#include "cli/command_line.h"
#include "cli/commands.h"
#include "cli/files.h"
#include "cli/help.h"
#include "job/suggest.h"

namespace strikeoff::cli {
namespace {

ExitCode wrong(const Streams& streams, const std::string& message) {
  streams.err << "strikeoff: " << message << "\n";
  return wrong_command;
}

/// An answer when the first word is no command: CLI11 would not name it.
std::optional<std::string> wrong_first_word(const std::string& word, const CLI::App& app) {
  std::vector<std::string> known;
  for (const CLI::App* command : app.get_subcommands({})) known.push_back(command->get_name());
  if (word == "--help" || word == "-h" || word == "--version") return std::nullopt;
  if (word.starts_with("-")) {
    return fmt::format("there is no option \"{}\" before the command; see strikeoff --help", word);
  }
  if (std::find(known.begin(), known.end(), word) != known.end()) return std::nullopt;
  return fmt::format("there is no command \"{}\"; {}", word,
                     did_you_mean(word, known, "the commands are " + quoted_list(known)));
}

/// Names the first word that no option or argument takes.
std::string unexpected(const CommandLine& line) {
  const std::string word = line.app.remaining(true).front();
  if (!word.starts_with("-")) return fmt::format("\"{}\" is one argument too many", word);
  std::vector<std::string> known;
  for (const CLI::App* command : line.app.get_subcommands()) {
    for (const CLI::Option* option : command->get_options()) {
      for (const std::string& name : option->get_lnames()) known.push_back("--" + name);
    }
  }
  return fmt::format("there is no option \"{}\" here; {}", word,
                     did_you_mean(word, known, "see strikeoff --help"));
}

ExitCode run_command(const CommandLine& line, const Streams& streams) {
  if (line.plan_command->parsed()) return command_plan(line.plan, streams);
  if (line.check_command->parsed()) return command_check(line.plan, streams);
  if (line.draw_command->parsed()) return command_draw(line.plan, streams);
  if (line.odds_command->parsed()) return command_odds(line.odds, streams);
  if (line.resume_command->parsed()) return command_resume(line.resume, streams);
  if (line.why_command->parsed()) return command_why(line.why, streams);
  if (line.new_command->parsed()) return command_new(streams);
  if (line.list_command->parsed()) return command_list(line.list, streams);
  return command_schema(line.schema, streams);
}

ExitCode run_line(const std::vector<std::string>& arguments, const Streams& streams) {
  CommandLine line;
  if (arguments.empty()) {
    streams.err << program_help(line.app);
    return wrong_command;
  }
  if (const auto problem = wrong_first_word(arguments.front(), line.app)) {
    return wrong(streams, *problem);
  }
  try {
    // CLI11 takes a vector from its end.
    line.app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::CallForHelp&) {
    const std::vector<CLI::App*> commands = line.app.get_subcommands();
    print(streams.out, commands.empty() ? program_help(line.app) : command_help(*commands.front()));
    return planned;
  } catch (const CLI::CallForVersion& version) {
    print(streams.out, std::string(version.what()) + "\n");
    return planned;
  } catch (const CLI::ExtrasError&) {
    return wrong(streams, unexpected(line));
  } catch (const CLI::ParseError& error) {
    return wrong(streams, std::string(error.what()) + "; see strikeoff --help");
  }
  return run_command(line, streams);
}

}  // namespace

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
