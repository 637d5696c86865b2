// SPDX-License-Identifier: MIT
#include "cli/command_line.h"

#include <fmt/core.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

#include "cli/files.h"
#include "cli/help.h"
#include "cli/page.h"
#include "core/format.h"
#include "job/suggest.h"

namespace strikeoff::cli {
namespace {

/// The options that several commands share are described once in the help.
constexpr const char* shared_options = "Shared";

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

/// An option that takes one of some words: "--format text|json".
void add_choice(CLI::App* command, const std::string& name, std::string& value,
                const std::vector<std::string>& words, const std::string& description,
                const char* group = "Options") {
  command->add_option(name, value, description)
      ->check(CLI::IsMember(words).description(""))
      ->type_name(joined(words, "|"))
      ->group(group);
}

void add_job(CLI::App* command, PlanOptions& options) {
  command->add_option("JOB", options.job, "the job file, or - for standard input")->required();
  add_choice(command, "--diagnostics", options.diagnostics, {"text", "json"},
             "how problems of the job file are given", shared_options);
}

void add_format(CLI::App* command, PlanOptions& options) {
  add_choice(command, "--format", options.format, {"text", "json"}, "for people or for programs",
             shared_options);
}

void add_look(CLI::App* command, Look& look) {
  add_choice(command, "--color", look.color, {"auto", "always", "never"},
             "headings, stops and cautions stand out; auto: on a terminal, unless NO_COLOR is set",
             shared_options);
  command
      ->add_option("--width", look.width,
                   fmt::format("columns of the text, {} to {}; else 100, or what the terminal has",
                               least_width, most_width))
      ->check(CLI::Validator(
          [](const std::string& text) {
            return width_of(text) ? ""
                                  : fmt::format("\"{}\" is no whole number from {} to {}", text,
                                                least_width, most_width);
          },
          ""))
      ->type_name("N")
      ->group(shared_options);
}

void add_quiet(CLI::App* command, PlanOptions& options, const std::string& description) {
  command->add_flag("-q,--quiet", options.quiet, description);
}

void add_what(CLI::App* command, std::string& value, const std::vector<std::string>& words) {
  command->add_option("WHAT", value, joined(words, ", "))
      ->required()
      ->check(CLI::IsMember(words).description(""));
}

CommandLine::CommandLine() {
  app.require_subcommand(1);
  app.set_help_flag("-h,--help", "this help, or the help of a command");
  app.set_version_flag("--version", "strikeoff " STRIKEOFF_VERSION, "the version");

  plan_command =
      app.add_subcommand("plan", "the plan: materials, cut list, batches, timetable, checks, cost");
  add_job(plan_command, plan);
  add_choice(plan_command, "--format", plan.format, {"text", "json", "html", "csv", "ics"},
             "how: text to read, json for programs, html to print, csv for a spreadsheet, ics for "
             "a calendar");
  add_choice(plan_command, "--table", plan.table, csv_table_names(),
             "which table the csv is: the parts to cut, if none is named");
  plan_command
      ->add_option("-o,--output", plan.output, "where to; the file is written whole or not at all")
      ->type_name("FILE");
  add_quiet(plan_command, plan, "no word about the file written");
  add_look(plan_command, plan.look);

  check_command =
      app.add_subcommand("check", "only the problems of the job file and the checks of the plan");
  add_job(check_command, plan);
  add_quiet(check_command, plan, "only stops and cautions");
  add_look(check_command, plan.look);

  draw_command = app.add_subcommand("draw", "drawings of the plan, as SVG files in a directory");
  add_job(draw_command, plan);
  draw_command->add_option("-o,--output", plan.output, "the directory, made if need be")
      ->required()
      ->type_name("DIR");
  add_quiet(draw_command, plan, "do not list the files written");

  odds_command = app.add_subcommand("odds", "how often that pour goes wrong, by simulation");
  add_job(odds_command, odds.plan);
  odds_command->add_option("--runs", odds.runs, "pours, 1 to 10000000 (default: 20000)")
      ->type_name("N");
  odds_command->add_option("--seed", odds.seed, "other random numbers (default: 1)")
      ->type_name("S");
  odds_command->add_option("--threads", odds.threads, "at once; the answer stays the same")
      ->type_name("T");
  odds_command
      ->add_option("--risk", odds.risk,
                   "a risk that is small enough: the dose for it is sought (default: 5 %)")
      ->type_name("PERCENT");
  add_quiet(odds_command, odds.plan, "no word about how far it is");
  add_format(odds_command, odds.plan);
  add_look(odds_command, odds.plan.look);

  resume_command = app.add_subcommand(
      "resume", "the rest of a pour under way, from a log of what has happened so far");
  add_job(resume_command, resume.plan);
  resume_command->add_option("LOG", resume.log, "the log of the pour, or - for standard input")
      ->required();
  add_format(resume_command, resume.plan);
  add_look(resume_command, resume.plan.look);

  why_command = app.add_subcommand(
      "why",
      "how a number of the plan came about: formula, inputs, source; without NAME all names");
  add_job(why_command, why.plan);
  why_command->add_option("NAME", why.name,
                          "the number's name, or its JSON Pointer in the plan file");
  add_format(why_command, why.plan);
  add_look(why_command, why.plan.look);

  new_command = app.add_subcommand("new", "a commented starter job");
  list_command = app.add_subcommand("list", "the shipped goods");
  add_what(list_command, list.what, list_names());
  add_look(list_command, list.look);
  schema_command = app.add_subcommand("schema", "the JSON Schema of a file");
  add_what(schema_command, schema, {"job", "plan", "log"});
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

/// "-o, --output FILE" and what it is for.
HelpLine help_of(const CLI::Option& option) {
  std::string words;
  for (const std::string& name : option.get_snames()) words += "-" + name + ", ";
  for (const std::string& name : option.get_lnames()) words += "--" + name + " ";
  if (option.get_items_expected_max() > 0) words += option.get_type_name();
  while (words.ends_with(" ")) words.pop_back();
  return {words, option.get_description()};
}

bool is_shared(const CLI::Option& option) {
  return option.get_group() == shared_options;
}

CommandHelp help_of(const CLI::App& command) {
  CommandHelp help{call(command), command.get_description(), {}, {}, {}};
  for (const CLI::Option* option : command.get_options()) {
    const std::string name = option->get_name(true);
    if (!option->get_positional()) {
      if (option == command.get_help_ptr()) continue;
      (is_shared(*option) ? help.shared : help.options).push_back(help_of(*option));
    } else if (name != "JOB" && name != "LOG") {
      help.arguments.push_back({name, option->get_description()});
    }
  }
  return help;
}

std::string help_of_all(const CLI::App& app) {
  std::vector<CommandHelp> commands;
  for (const CLI::App* command : app.get_subcommands({})) commands.push_back(help_of(*command));
  return program_help(commands, help_of(*app.get_help_ptr()));
}

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

}  // namespace

ExitCode run_line(const std::vector<std::string>& arguments, const Streams& streams) {
  CommandLine line;
  if (arguments.empty()) {
    streams.err << help_of_all(line.app);
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
    print(streams.out,
          commands.empty() ? help_of_all(line.app) : command_help(help_of(*commands.front())));
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

}  // namespace strikeoff::cli
