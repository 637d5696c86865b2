// SPDX-License-Identifier: MIT
// How long the rest of a pour takes to plan, as a multiple of the whole plan it begins with, for
// twelve batches and for sixty.
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <exception>
#include <iomanip>
#include <iostream>
#include <stdexcept>
#include <string>

#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"
#include "strikeoff/resume.h"

namespace {

/// The least of so many runs, for what disturbs one only ever makes it longer.
template <class Work>
double seconds_of(int runs, Work work) {
  double least = 0;
  for (int run = 0; run < runs; ++run) {
    const auto start = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    least = run == 0 ? taken.count() : std::min(least, taken.count());
  }
  return least;
}

void measure(const std::string& length, int runs) {
  const strikeoff::ReadResult read = strikeoff::read_job(R"({
    "units": "metric", "mix": "rapid-fine-24kg",
    "slabs": [{"base": {"rectangle": {"length": ")" + length +
                                                         R"(", "depth": "750 mm"}},
               "thickness": "42 mm", "panel": "none",
               "openings": [{"rectangle": {"length": "500 mm", "depth": "350 mm"},
                             "at": ["1300 mm", "200 mm"]}]}]})");
  if (!read.job) throw std::runtime_error(read.diagnostics.front().message);
  const strikeoff::LogResult log = strikeoff::read_log(
      R"({"batches": [{"contact": "0 min", "placed": "8 min"}, {"contact": "5 min"}]})", *read.job);
  if (!log.log) throw std::runtime_error(log.diagnostics.front().message);
  std::size_t batches = 0;
  const double plan =
      seconds_of(runs, [&] { batches = strikeoff::make_plan(*read.job).batches.size(); });
  const double rest = seconds_of(runs, [&] {
    static_cast<void>(resume(*read.job, strikeoff::shipped_catalogue(), *log.log));
  });
  std::cout << std::fixed << std::setprecision(2) << "rest of a pour of " << batches
            << " batches: " << rest / plan << " times as long as its plan, " << rest * 1000
            << " ms, should be under 50\n";
}

}  // namespace

int main(int argc, char** argv) try {
  const int runs = argc == 2 ? std::atoi(argv[1]) : 0;
  if (runs < 1) {
    std::cerr << "usage: resume_bench RUNS\n";
    return 2;
  }
  measure("4600 mm", runs);
  measure("23 m", runs);
  return 0;
} catch (const std::exception& error) {
  std::cerr << "resume_bench: " << error.what() << '\n';
  return 1;
}
