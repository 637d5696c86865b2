// SPDX-License-Identifier: MIT
#include <fmt/format.h>

#include <algorithm>
#include <ostream>

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

std::string rendered(const Plan& plan, const PlanOptions& options, const TextPage& page) {
  if (options.format == "json") return render_json(plan);
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
  const std::optional<Job> job = load_job(options, streams);
  if (!job) return wrong_job;
  const Plan plan = make_plan(*job);
  if (to_file) {
    write_file(options.output, rendered(plan, options, page_for_file(options.look)));
    if (!options.quiet) {
      streams.err << "wrote " << options.output << ": " << key_figures(plan) << "\n";
    }
  } else {
    print(streams.out, rendered(plan, options, page_for(options.look, streams)));
  }
  return has_stop(plan) ? planned_stop : planned;
}

}  // namespace strikeoff::cli
