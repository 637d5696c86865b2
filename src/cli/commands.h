// SPDX-License-Identifier: MIT
#pragma once

#include <iosfwd>
#include <string>
#include <string_view>
#include <vector>

#include "cli/exit_code.h"

namespace strikeoff::cli {

struct Streams {
  std::istream& in;
  std::ostream& out;
  std::ostream& err;
};

/// How text is shown.
struct Look {
  std::string color = "auto";  // or "always", "never"
  std::string width;           // columns; empty: what fits
};

struct PlanOptions {
  std::string job;                   // path, or "-"
  std::string format = "text";       // or "json" and, of a plan, "html", "csv", "ics"
  std::string table;                 // of the CSV
  std::string output;                // path; empty or "-": standard output; of `draw` the directory
  std::string diagnostics = "text";  // or "json"
  bool quiet = false;
  Look look;
};

struct OddsArguments {
  PlanOptions plan;  // all but output
  // As written.
  std::string runs = "20000", seed = "1";
  std::string threads;  // empty: as many as the machine has
  std::string risk = "5";
};

struct ResumeArguments {
  PlanOptions plan;  // all but output
  std::string log;   // path, or "-"
};

struct WhyArguments {
  PlanOptions plan;  // all but output
  std::string name;  // of the number, or its JSON Pointer; empty: all names
};

struct ListArguments {
  std::string what;
  Look look;
};

/// `plan JOB`: the whole plan.
[[nodiscard]] ExitCode command_plan(const PlanOptions& options, const Streams& streams);
/// `check JOB`: only its problems or, when there are none, the plan's checks.
[[nodiscard]] ExitCode command_check(const PlanOptions& options, const Streams& streams);
/// `draw JOB -o DIR`: every drawing of the plan as a file, all of them or none; prints their paths,
/// and names drawings there that are not of this plan.
[[nodiscard]] ExitCode command_draw(const PlanOptions& options, const Streams& streams);
/// `odds JOB`: how often the plan's pour goes wrong.
[[nodiscard]] ExitCode command_odds(const OddsArguments& arguments, const Streams& streams);
/// `resume JOB LOG`: the rest of a pour that is under way.
[[nodiscard]] ExitCode command_resume(const ResumeArguments& arguments, const Streams& streams);
/// `why JOB [NAME]`: how a number of the plan came about, or the names of all.
[[nodiscard]] ExitCode command_why(const WhyArguments& arguments, const Streams& streams);
/// `new`: a starter job.
[[nodiscard]] ExitCode command_new(const Streams& streams);
/// `list WHAT`: one part of the shipped catalogue.
[[nodiscard]] ExitCode command_list(const ListArguments& arguments, const Streams& streams);
/// `schema job|plan|log`.
[[nodiscard]] ExitCode command_schema(std::string_view what, const Streams& streams);

/// What `--table` can name.
[[nodiscard]] const std::vector<std::string>& csv_table_names();

/// What `list` can list.
[[nodiscard]] const std::vector<std::string>& list_names();

}  // namespace strikeoff::cli
