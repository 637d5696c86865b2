// SPDX-License-Identifier: MIT
#include "cli/run.h"

#include <fmt/format.h>

#include <CLI/CLI.hpp>
#include <algorithm>
#include <exception>
#include <optional>
#include <ostream>

#include "cli/commands.h"
#include "cli/files.h"
#include "job/suggest.h"

namespace strikeoff::cli {
namespace {

constexpr std::string_view help =
    R"(strikeoff plans the pour of a concrete slab that is cast where it stays: what to buy, what to
cut, how much water goes into which batch and when, and what could go wrong.

  strikeoff new > job.json         a starter job: change the values to yours
  strikeoff plan job.json          the plan

Commands:
  plan JOB       the plan: materials, cut list, batches, timetable, checks, cost
                   --format text|json     how (default: text)
                   -o, --output FILE      where to; FILE is written whole or not at all
                   --diagnostics text|json  how problems of the job file are given
  check JOB      only the problems of the job file and the checks of the plan
                   --diagnostics text|json
  draw JOB -o DIR  drawings, as SVG files in a directory, which is made if need be
                   -o, --output DIR       where to
                   --diagnostics text|json
  odds JOB       how often that pour goes wrong, by simulation
                   --runs N               pours, 1 to 10000000 (default: 20000)
                   --seed S               other random numbers (default: 1)
                   --threads T            at once; the answer stays the same
                   --risk 5 %             a risk that is small enough: the dose for it is sought
                   --format, --diagnostics  as above
  resume JOB LOG the rest of a pour under way, from a log of what has happened so far
                   --format, --diagnostics  as above
  why JOB [NAME] how a number of the plan came about: formula, inputs, source; without NAME all
                 names. NAME may be a JSON Pointer of the plan file
                   --format, --diagnostics  as above
  new            a commented starter job
  list WHAT      the shipped goods: mixes, boards, panels, additives, sealers or supplies
  schema WHAT    the JSON Schema of a file: job, plan or log

  JOB is a file, or - for standard input; so is LOG.
  -h, --help     this help, or the help of a command
  --version      the version

Exit status:
  0   planned, and nothing is at STOP
  1   planned, but something is at STOP: the plan as given would fail or hurt someone
  2   the command line is wrong
  3   the job file is wrong, or the log
  4   a file could not be read or written
  70  a bug in strikeoff
)";

const std::vector<std::string>& command_names() {
  static const std::vector<std::string> names = {"plan", "check", "draw", "odds",  "resume",
                                                 "why",  "new",   "list", "schema"};
  return names;
}

/// The command line as CLI11 reads it.
struct CommandLine {
  CLI::App app{"", "strikeoff"};
  PlanOptions plan;
  OddsArguments odds;
  ResumeArguments resume;
  WhyArguments why;
  std::string what;
  CLI::App *plan_command, *check_command, *draw_command, *odds_command, *resume_command,
      *why_command, *new_command, *list_command, *schema_command;

  CommandLine() {
    app.require_subcommand(1);
    app.set_version_flag("--version", "strikeoff " STRIKEOFF_VERSION, "the version");
    plan_command = app.add_subcommand("plan", "The plan of a job.");
    check_command = app.add_subcommand("check", "The problems of a job file, or its checks.");
    draw_command = app.add_subcommand("draw", "Drawings of the plan, as SVG files.");
    odds_command = app.add_subcommand("odds", "How often that pour goes wrong.");
    resume_command = app.add_subcommand("resume", "The rest of a pour under way.");
    why_command = app.add_subcommand("why", "How a number of the plan came about.");
    new_command = app.add_subcommand("new", "A commented starter job.");
    list_command = app.add_subcommand("list", "The shipped goods.");
    schema_command = app.add_subcommand("schema", "The JSON Schema of a file.");

    const CLI::IsMember forms({"text", "json"});
    const auto add_job = [&](CLI::App* command, PlanOptions& options) {
      command->add_option("JOB", options.job, "the job file, or - for standard input")->required();
      command->add_option("--diagnostics", options.diagnostics, "how problems are given")
          ->check(forms);
    };
    add_job(plan_command, plan);
    add_job(check_command, plan);
    add_job(draw_command, plan);
    draw_command->add_option("-o,--output", plan.output, "the directory to write to")->required();
    add_job(odds_command, odds.plan);
    add_job(resume_command, resume.plan);
    resume_command->add_option("LOG", resume.log, "the log of the pour, or -")->required();
    resume_command->add_option("--format", resume.plan.format, "form of the rest")->check(forms);
    add_job(why_command, why.plan);
    why_command->add_option("NAME", why.name, "the number's name or JSON Pointer; none: all names");
    why_command->add_option("--format", why.plan.format, "form of the answer")->check(forms);
    plan_command->add_option("--format", plan.format, "form of the plan")->check(forms);
    odds_command->add_option("--format", odds.plan.format, "form of the odds")->check(forms);
    odds_command->add_option("--runs", odds.runs, "pours, 1 to 10000000");
    odds_command->add_option("--seed", odds.seed, "other random numbers");
    odds_command->add_option("--threads", odds.threads, "at once");
    odds_command->add_option("--risk", odds.risk, "small enough, in percent");
    plan_command->add_option("-o,--output", plan.output, "the file to write");
    list_command->add_option("WHAT", what, "what to list")
        ->required()
        ->check(CLI::IsMember(list_names()));
    schema_command->add_option("WHAT", what, "job, plan or log")
        ->required()
        ->check(CLI::IsMember({"job", "plan", "log"}));
  }

  CommandLine(const CommandLine&) = delete;
  CommandLine& operator=(const CommandLine&) = delete;
};

ExitCode wrong(const Streams& streams, const std::string& message) {
  streams.err << "strikeoff: " << message << "\n";
  return wrong_command;
}

/// An answer when the first word is no command: CLI11 would not name it.
std::optional<std::string> wrong_first_word(const std::vector<std::string>& arguments) {
  const std::string& word = arguments.front();
  const auto& known = command_names();
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
  if (line.list_command->parsed()) return command_list(line.what, streams);
  return command_schema(line.what, streams);
}

ExitCode run_line(const std::vector<std::string>& arguments, const Streams& streams) {
  if (arguments.empty()) {
    streams.err << help;
    return wrong_command;
  }
  if (const auto problem = wrong_first_word(arguments)) return wrong(streams, *problem);
  CommandLine line;
  try {
    // CLI11 takes a vector from its end.
    line.app.parse(std::vector<std::string>(arguments.rbegin(), arguments.rend()));
  } catch (const CLI::CallForHelp&) {
    const bool of_command = !line.app.get_subcommands().empty();
    print(streams.out, of_command ? line.app.help() : std::string(help));
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
