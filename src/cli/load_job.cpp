// SPDX-License-Identifier: MIT
#include "cli/load_job.h"

#include <ostream>

#include "cli/files.h"
#include "strikeoff/read_job.h"

namespace strikeoff::cli {

std::optional<Job> load_job(const PlanOptions& options, const Streams& streams) {
  const std::string text = read_file(options.job, streams.in);
  ReadResult result = read_job(text);
  if (!result.job) print_problems(result.diagnostics, options.job, text, options, streams);
  return std::move(result.job);
}

void print_problems(const std::vector<Diagnostic>& problems, const std::string& path,
                    const std::string& text, const PlanOptions& options, const Streams& streams) {
  const std::string name = path == "-" ? "<stdin>" : path;
  streams.err << (options.diagnostics == "json" ? render_diagnostics_json(problems, name)
                                                : render_diagnostics(problems, name, text));
}

}  // namespace strikeoff::cli
