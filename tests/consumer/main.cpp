// SPDX-License-Identifier: MIT
#include <strikeoff/planner.h>
#include <strikeoff/read_job.h>
#include <strikeoff/render.h>

#include <iostream>

int main() {
  const strikeoff::ReadResult read = strikeoff::read_job(R"({
    "units": "us",
    "slabs": [{
      "base": {"rectangle": {"length": "92 in", "depth": "26 in"}},
      "overhang": "1 in",
      "thickness": "1 1/2 in"
    }],
    "mix": "rapid-fine-50lb"
  })");
  if (!read.job) {
    std::cerr << "the job was refused\n";
    return 1;
  }
  std::cout << strikeoff::render_text(strikeoff::make_plan(*read.job));
}
