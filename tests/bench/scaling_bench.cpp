// SPDX-License-Identifier: MIT
// How the time of a plan grows with its job: slabs of twelve corners and an opening, right-angled
// and slanted; and slabs each of its own length, formed from boards half as long. Times per slab,
// as multiples of the smallest job's of the same kind, so that the machine's own speed drops out: 1
// is linear.
#include <chrono>
#include <cstdlib>
#include <exception>
#include <iomanip>
#include <iostream>
#include <stdexcept>
#include <string>
#include <vector>

#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"
#include "strikeoff/render.h"

namespace {

using strikeoff::Job;

/// A staircase of five steps, 2.5 m wide, and a sink; each slab a little longer than the last.
std::string slab(int number) {
  const std::string wide = std::to_string(2500 + number) + " mm";
  return R"({"name": "slab )" + std::to_string(number) + R"(", "base": {"corners": [
      ["0 mm", "0 mm"], [")" +
         wide + R"(", "0 mm"], [")" + wide + R"(", "600 mm"],
      ["2000 mm", "600 mm"], ["2000 mm", "800 mm"], ["1600 mm", "800 mm"],
      ["1600 mm", "1000 mm"], ["1200 mm", "1000 mm"], ["1200 mm", "1200 mm"],
      ["800 mm", "1200 mm"], ["800 mm", "1400 mm"], ["0 mm", "1400 mm"]]},
    "overhang": "25 mm", "thickness": "40 mm",
    "openings": [{"name": "sink", "rectangle": {"length": "500 mm", "depth": "350 mm"},
                  "at": ["300 mm", "130 mm"]}]})";
}

std::string own_length(int number) {
  return R"({"name": "slab )" + std::to_string(number) +
         R"(", "base": {"rectangle": {"length": ")" + std::to_string(3000 + number) +
         R"( mm", "depth": "300 mm"}},
    "overhang": "25 mm", "thickness": "40 mm", "panel": "none"})";
}

Job job_of(int slabs, std::string (*one)(int), const std::string& more) {
  std::string text = R"({"units": "metric", "mix": "rapid-fine-24kg", )" + more + R"("slabs": [)";
  for (int k = 1; k <= slabs; ++k) text += (k > 1 ? "," : "") + one(k);
  const strikeoff::ReadResult read = strikeoff::read_job(text + "]}");
  if (!read.job) throw std::runtime_error(read.diagnostics.front().message);
  return *read.job;
}

/// Every corner moved to the right by a tenth of how far back it lies.
Job slanted(Job job) {
  for (strikeoff::Slab& slab : job.slabs) {
    for (strikeoff::Point& p : slab.base) p.x += 0.1 * p.y;
  }
  return job;
}

/// The least of three, for what disturbs a run only ever makes it longer.
double seconds_of(const Job& job) {
  double least = 0;
  for (int run = 0; run < 3; ++run) {
    const auto start = std::chrono::steady_clock::now();
    const strikeoff::Plan plan = strikeoff::make_plan(job);
    const std::size_t printed = render_text(plan).size() + render_json(plan).size();
    const std::chrono::duration<double> taken = std::chrono::steady_clock::now() - start;
    if (printed == 0) throw std::runtime_error("an empty plan");
    if (run == 0 || taken.count() < least) least = taken.count();
  }
  return least;
}

template <class Make>
void measure(const std::string& kind, const std::vector<int>& sizes, Make make) {
  double first = 0;
  for (const int slabs : sizes) {
    const double each = seconds_of(make(slabs)) / slabs;
    if (first == 0) first = each;
    std::cout << std::left << std::setw(14) << kind << std::right << std::setw(5) << slabs
              << " slabs  " << std::fixed << std::setprecision(3) << std::setw(9) << each * 1000
              << " ms each  x " << std::setprecision(2) << each / first << std::endl;
  }
}

}  // namespace

int main(int argc, char** argv) try {
  const int least = argc == 2 ? std::atoi(argv[1]) : 0;
  if (least < 1) {
    std::cerr << "usage: scaling_bench SLABS\n"
                 "times jobs of SLABS, twice and four times as many slabs\n";
    return 2;
  }
  const std::vector<int> sizes{least, 2 * least, 4 * least};
  measure("right-angled", sizes, [](int n) { return job_of(n, slab, ""); });
  measure("slanted", sizes, [](int n) { return slanted(job_of(n, slab, "")); });
  measure("short boards", sizes, [](int n) {
    return job_of(n, own_length, R"("forms": {"strip_stock": [{"name": "short board",
        "length": "1500 mm", "width": "285 mm", "thickness": "19 mm"}]}, )");
  });
  return 0;
} catch (const std::exception& error) {
  std::cerr << "scaling_bench: " << error.what() << '\n';
  return 1;
}
