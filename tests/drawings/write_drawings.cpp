// SPDX-License-Identifier: MIT
// Writes every drawing of jobs, and the plan: write_drawings DIRECTORY JOB…
// A job's files are DIRECTORY/<its number>-<name>.svg and DIRECTORY/<its number>-plan.json.
#include <filesystem>
#include <fstream>
#include <iostream>
#include <iterator>
#include <string>

#include "strikeoff/draw.h"
#include "strikeoff/planner.h"
#include "strikeoff/read_job.h"
#include "strikeoff/render.h"

int main(int argc, char** argv) {
  if (argc < 3) return 2;
  const std::filesystem::path directory = argv[1];
  for (int i = 2; i < argc; ++i) {
    std::ifstream file(argv[i], std::ios::binary);
    const std::string text{std::istreambuf_iterator<char>(file), {}};
    const strikeoff::ReadResult read = strikeoff::read_job(text);
    if (!read.job) {
      std::cerr << strikeoff::render_diagnostics(read.diagnostics, argv[i], text);
      return 3;
    }
    const strikeoff::Plan plan = strikeoff::make_plan(*read.job);
    const std::string stem = std::to_string(i - 1) + "-";
    std::ofstream(directory / (stem + "plan.json"), std::ios::binary) << render_json(plan);
    for (const strikeoff::Drawing& drawing : strikeoff::drawings_of(plan)) {
      std::ofstream(directory / (stem + drawing.name + ".svg"), std::ios::binary) << drawing.svg;
    }
  }
  return 0;
}
