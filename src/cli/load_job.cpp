// SPDX-License-Identifier: MIT
#include "cli/load_job.h"

#include <ostream>

#include "cli/files.h"
#include "strikeoff/read_job.h"

namespace strikeoff::cli {

std::optional<Job> load_job(const PlanOptions& options, const Streams& streams) {
  const std::string text = read_file(options.job, streams.in);
  ReadResult result = read_job(text);
  if (!result.job) {
    const std::string name = options.job == "-" ? "<stdin>" : options.job;
    streams.err << (options.diagnostics == "json"
                        ? render_diagnostics_json(result.diagnostics, name)
                        : render_diagnostics(result.diagnostics, name, text));
  }
  return std::move(result.job);
}

}  // namespace strikeoff::cli
