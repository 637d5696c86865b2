// SPDX-License-Identifier: MIT
// How many pours of twelve batches are simulated in a second, how many in the time of one whole
// plan, and how much faster two threads are than one.
#include <algorithm>
#include <chrono>
#include <cstdlib>
#include <exception>
#include <iomanip>
#include <iostream>
#include <stdexcept>

#include "strikeoff/odds.h"
#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"

namespace {

/// The least of three, for what disturbs a run only ever makes it longer.
template <class Work>
double seconds_of(Work work) {
  double least = 0;
  for (int run = 0; run < 3; ++run) {
    const auto start = std::chrono::steady_clock::now();
    work();
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    least = run == 0 ? taken.count() : std::min(least, taken.count());
  }
  return least;
}

}  // namespace

int main(int argc, char** argv) try {
  const int pours = argc == 2 ? std::atoi(argv[1]) : 0;
  if (pours < 1) {
    std::cerr << "usage: odds_bench POURS\n";
    return 2;
  }
  const strikeoff::ReadResult read = strikeoff::read_job(R"({
    "units": "metric", "mix": "rapid-fine-24kg",
    "slabs": [{"base": {"rectangle": {"length": "4400 mm", "depth": "750 mm"}},
               "thickness": "42 mm", "panel": "none"}]})");
  if (!read.job) throw std::runtime_error(read.diagnostics.front().message);
  const strikeoff::Plan plan = strikeoff::make_plan(*read.job);
  if (plan.batches.size() != 12) throw std::runtime_error("the job is not poured in 12 batches");

  const double planning = seconds_of([&] { static_cast<void>(strikeoff::make_plan(*read.job)); });
  const auto simulating = [&](int threads) {
    return seconds_of([&] {
      static_cast<void>(strikeoff::simulate(*read.job, plan, {.runs = pours, .threads = threads}));
    });
  };
  const double one = simulating(1), two = simulating(2);
  std::cout << std::fixed << std::setprecision(0) << pours / one << " pours a second, "
            << pours / two << " on two threads, should be at least 500000\n"
            << pours / one * planning << " pours in the time of one plan\n"
            << std::setprecision(2) << "two threads are " << one / two << " times as fast as one\n";
  return 0;
} catch (const std::exception& error) {
  std::cerr << "odds_bench: " << error.what() << '\n';
  return 1;
}
