// SPDX-License-Identifier: MIT
#include <fmt/core.h>
#include <unistd.h>

#include <algorithm>
#include <charconv>
#include <chrono>
#include <iostream>
#include <thread>

#include "cli/commands.h"
#include "cli/files.h"
#include "cli/load_job.h"
#include "cli/page.h"
#include "strikeoff/odds.h"
#include "strikeoff/planner.h"
#include "strikeoff/render.h"

namespace strikeoff::cli {
namespace {

/// The whole text as one number.
template <class Number>
std::optional<Number> whole(std::string_view text) {
  Number value{};
  const auto [end, error] = std::from_chars(text.data(), text.data() + text.size(), value);
  if (error != std::errc() || end != text.data() + text.size()) return std::nullopt;
  return value;
}

/// "5", "5 %" or "5%" as a fraction.
std::optional<double> percent(std::string_view text) {
  if (text.ends_with("%")) text.remove_suffix(1);
  while (text.ends_with(" ")) text.remove_suffix(1);
  const auto value = whole<double>(text);
  if (!value || !(*value >= 0.1 && *value <= 50)) return std::nullopt;
  return *value / 100;
}

/// What is wrong with the first option that is, and how to write it; nothing when all are right.
std::optional<std::string> read_options(const OddsArguments& given, OddsOptions& options) {
  const auto runs = whole<std::int64_t>(given.runs);
  if (!runs || *runs < 1 || *runs > most_runs) {
    return fmt::format(
        "--runs takes a whole number of pours from 1 to {}, as in --runs 20000; it says \"{}\"",
        most_runs, given.runs);
  }
  const auto seed = whole<std::uint64_t>(given.seed);
  if (!seed) {
    return fmt::format("--seed takes a whole number from 0 on, as in --seed 1; it says \"{}\"",
                       given.seed);
  }
  const int cores = static_cast<int>(std::thread::hardware_concurrency());
  const auto threads = given.threads.empty() ? std::clamp(cores, 1, most_threads)
                                             : whole<int>(given.threads).value_or(0);
  if (threads < 1 || threads > most_threads) {
    return fmt::format(
        "--threads takes a whole number from 1 to {}, as in --threads 2; it says \"{}\"",
        most_threads, given.threads);
  }
  const auto risk = percent(given.risk);
  if (!risk) {
    return fmt::format("--risk takes a percentage from 0.1 to 50, as in --risk 5; it says \"{}\"",
                       given.risk);
  }
  options.runs = *runs;
  options.seed = *seed;
  options.threads = threads;
  options.risk = *risk;
  return std::nullopt;
}

/// Tells a person at a terminal how far it is, from a second on, twice a second. Otherwise silent.
class Progress {
 public:
  Progress(std::ostream& err, std::int64_t runs, bool quiet)
      : err_(err),
        runs_(runs),
        shows_(!quiet && &err == &std::cerr && isatty(STDERR_FILENO) == 1) {}
  Progress(const Progress&) = delete;
  Progress& operator=(const Progress&) = delete;
  ~Progress() {
    if (width_ > 0) err_ << '\r' << std::string(width_, ' ') << '\r' << std::flush;
  }

  void show(std::int64_t done) {
    const auto now = std::chrono::steady_clock::now();
    if (!shows_ || now < next_) return;
    next_ = now + std::chrono::milliseconds(500);
    const std::string text = fmt::format("{} of {} pours", done, runs_);
    width_ = std::max(width_, text.size());
    err_ << '\r' << text << std::flush;
  }

 private:
  std::ostream& err_;
  std::int64_t runs_;
  bool shows_;
  std::size_t width_ = 0;
  std::chrono::steady_clock::time_point next_ =
      std::chrono::steady_clock::now() + std::chrono::seconds(1);
};

}  // namespace

ExitCode command_odds(const OddsArguments& arguments, const Streams& streams) {
  OddsOptions options;
  if (const auto problem = read_options(arguments, options)) {
    streams.err << "strikeoff: " << *problem << "\n";
    return wrong_command;
  }
  const std::optional<Job> read = load_job(arguments.plan, streams);
  if (!read) return wrong_job;
  const Job job = settled_job(*read);
  const Plan plan = make_plan(job);
  const Odds odds = [&] {
    Progress progress(streams.err, options.runs, arguments.plan.quiet);
    options.progress = [&](std::int64_t done) { progress.show(done); };
    return simulate(job, plan, options);
  }();
  print(streams.out, arguments.plan.format == "json"
                         ? render_json(odds)
                         : render_text(odds, page_for(arguments.plan.look, streams)));
  return has_stop(plan) ? planned_stop : planned;
}

}  // namespace strikeoff::cli
