// SPDX-License-Identifier: MIT
#include <fmt/core.h>

#include <algorithm>
#include <filesystem>
#include <ostream>
#include <set>
#include <vector>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load_job.h"
#include "strikeoff/draw.h"
#include "strikeoff/planner.h"

namespace strikeoff::cli {
namespace {

std::string path_in(const std::string& directory, const Drawing& drawing) {
  return std::filesystem::path(directory) / (drawing.name + ".svg");
}

/// Drawings of an earlier plan stay where they are, but nobody is to saw by them.
void warn_of_others(const std::string& directory, const std::vector<Drawing>& drawings,
                    std::ostream& err) {
  constexpr std::size_t most_named = 5;
  std::set<std::string> ours, others;
  for (const Drawing& drawing : drawings) ours.insert(drawing.name);
  std::error_code failed;
  std::filesystem::directory_iterator entry(directory, failed), end;
  // What cannot be listed is not warned of: all files are written by now.
  for (; !failed && entry != end; entry.increment(failed)) {
    const std::filesystem::path& path = entry->path();
    if (path.extension() == ".svg" && !ours.contains(path.stem())) others.insert(path.filename());
  }
  if (others.empty()) return;
  std::string names;
  std::size_t named = 0;
  for (const std::string& name : others) {
    if (++named > most_named) break;
    names += fmt::format("{}\"{}\"", named == 1 ? "" : ", ", name);
  }
  if (others.size() > most_named) {
    names += fmt::format(" and {} more", others.size() - most_named);
  }
  err << fmt::format(
      "strikeoff: \"{}\" also holds drawings that are not of this plan: {}; do not work by them\n",
      directory, names);
}

}  // namespace

ExitCode command_draw(const PlanOptions& options, const Streams& streams) {
  const std::optional<Job> job = load_job(options, streams);
  if (!job) return wrong_job;
  const Plan plan = make_plan(*job);
  const std::vector<Drawing> drawings = drawings_of(plan);
  std::string paths;
  std::vector<NewFile> files;
  for (const Drawing& drawing : drawings) {
    files.push_back({path_in(options.output, drawing), drawing.svg});
    if (same_file(options.job, files.back().path)) {
      streams.err << "strikeoff: a drawing would overwrite the job file \"" << options.job
                  << "\"; name another directory after -o\n";
      return wrong_command;
    }
    paths += files.back().path + "\n";
  }
  make_directory(options.output);
  write_files(files);
  if (!options.quiet) print(streams.out, paths);
  warn_of_others(options.output, drawings, streams.err);
  return has_stop(plan) ? planned_stop : planned;
}

}  // namespace strikeoff::cli
