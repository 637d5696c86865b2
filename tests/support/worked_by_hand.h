// SPDX-License-Identifier: MIT
#pragma once

#include <catch2/catch.hpp>
#include <fstream>
#include <sstream>
#include <stdexcept>
#include <string>

#include "strikeoff/catalogue.h"
#include "strikeoff/planner.h"
#include "support/read.h"
#include "support/source_dir.h"

namespace strikeoff::test {

/// The plan of examples/NAME/job.json.
inline Plan example_plan(const std::string& name) {
  std::ifstream file(source_dir() / "examples" / name / "job.json");
  std::ostringstream text;
  text << file.rdbuf();
  return make_plan(job_of(text.str()), shipped_catalogue());
}

/// A figure worked out by hand, in plain doubles and without the program's functions.
inline Approx by_hand(double value) {
  return Approx(value).epsilon(1e-6).margin(0);
}

inline double value_of(const Plan& plan, const std::string& code) {
  for (const Check& check : plan.checks) {
    if (check.code == code && check.value) return *check.value;
  }
  FAIL("no value of " << code);
  return 0;
}

inline const LiftPlan& lift_named(const Plan& plan, const std::string& name) {
  for (const LiftPlan& lift : plan.handling.lifts) {
    if (lift.name == name) return lift;
  }
  throw std::runtime_error("no lift " + name);
}

inline const CostLine& line_of(const Plan& plan, const std::string& item) {
  for (const CostLine& line : plan.cost.lines) {
    if (line.item == item) return line;
  }
  throw std::runtime_error("no line " + item);
}

}  // namespace strikeoff::test
