// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <optional>
#include <ostream>
#include <string>
#include <vector>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load_job.h"
#include "cli/page.h"
#include "core/format.h"
#include "strikeoff/planner.h"
#include "strikeoff/render.h"

namespace strikeoff::cli {
namespace {

/// "4 bags in 4 batches, 129.60 USD; 1 STOP".
std::string key_figures(const Plan& plan) {
  const auto stops = std::count_if(plan.checks.begin(), plan.checks.end(),
                                   [](const Check& check) { return check.level == Level::stop; });
  std::string text = fmt::format("{} in {}, {}", count(plan.mix.bags, "bag", "bags"),
                                 count(plan.pour.batches, "batch", "batches"),
                                 show_money(plan.cost.total, plan.cost.currency));
  if (stops > 0) text += "; " + count(static_cast<int>(stops), "STOP", "STOPs");
  return text;
}

/// In the order of CsvTable.
const std::vector<std::string> table_names = {"parts", "boards", "materials", "batches",
                                              "schedule"};

CsvTable table_of(const std::string& name) {
  const auto found = std::find(table_names.begin(), table_names.end(), name);
  if (found == table_names.end()) return CsvTable::parts;
  return static_cast<CsvTable>(found - table_names.begin());
}

/// Nothing for a calendar of a job without a date.
std::optional<std::string> rendered(const Plan& plan, const PlanOptions& options,
                                    const TextPage& page) {
  if (options.format == "json") return render_json(plan);
  if (options.format == "html") return render_html(plan);
  if (options.format == "csv") return render_csv(plan, table_of(options.table));
  if (options.format == "ics") return render_ics(plan);
  return render_text(plan, page);
}

}  // namespace

ExitCode command_plan(const PlanOptions& options, const Streams& streams) {
  const bool to_file = !options.output.empty() && options.output != "-";
  if (to_file && same_file(options.job, options.output)) {
    streams.err << "strikeoff: the plan would overwrite the job file \"" << options.job
                << "\"; name another file after -o\n";
    return wrong_command;
  }
  if (!options.table.empty() && options.format != "csv") {
    streams.err << "strikeoff: --table says which table a CSV has; add --format csv\n";
    return wrong_command;
  }
  const std::optional<Job> job = load_job(options, streams);
  if (!job) return wrong_job;
  const Plan plan = make_plan(*job);
  const std::optional<std::string> text = rendered(
      plan, options, to_file ? page_for_file(options.look) : page_for(options.look, streams));
  if (!text) {
    streams.err << "strikeoff: the job gives no date, so no step has a day in a calendar; put one "
                   "in the job file, as in \"date\": \"2026-05-16T09:00\"\n";
    return wrong_job;
  }
  if (to_file) {
    write_file(options.output, *text);
    if (!options.quiet) {
      streams.err << "wrote " << options.output << ": " << key_figures(plan) << "\n";
    }
  } else {
    print(streams.out, *text);
  }
  return has_stop(plan) ? planned_stop : planned;
}

const std::vector<std::string>& csv_table_names() {
  return table_names;
}

}  // namespace strikeoff::cli
