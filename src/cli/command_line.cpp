// SPDX-License-Identifier: MIT
#include "cli/command_line.h"

#include <fmt/format.h>

#include <vector>

#include "cli/page.h"

namespace strikeoff::cli {
namespace {

/// An option that takes one of some words: "--format text|json".
void add_choice(CLI::App* command, const std::string& name, std::string& value,
                const std::vector<std::string>& words, const std::string& description,
                const char* group = "Options") {
  command->add_option(name, value, description)
      ->check(CLI::IsMember(words).description(""))
      ->type_name(fmt::format("{}", fmt::join(words, "|")))
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
  command->add_option("WHAT", value, fmt::format("{}", fmt::join(words, ", ")))
      ->required()
      ->check(CLI::IsMember(words).description(""));
}

}  // namespace

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

}  // namespace strikeoff::cli
