// SPDX-License-Identifier: MIT
#include <strikeoff/planner.h>
#include <strikeoff/read_job.h>
#include <strikeoff/render.h>

#include <iostream>

int main() {
  const strikeoff::ReadResult read = strikeoff::read_job(R"({
    "units": "us",
    "slabs": [{
      "base": {"rectangle": {"length": "76 in", "depth": "24 in"}},
      "overhang": "1 1/8 in",
      "thickness": "1 3/4 in"
    }],
    "mix": "rapid-fine-48lb"
  })");
  if (!read.job) {
    std::cerr << "the job was refused\n";
    return 1;
  }
  std::cout << strikeoff::render_text(strikeoff::make_plan(*read.job));
}
