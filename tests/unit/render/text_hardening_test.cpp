// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "render/text_sections.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

bool says(const Plan& plan, const char* words) {
  return text::hardening(plan).str().find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("times that hold as the bag says them need no section", "[text]") {
  Plan plan = potting_bench_plan();
  CHECK(text::hardening(plan).empty());
  plan.hardening.slowing = 1.04;
  CHECK(text::hardening(plan).empty());
  plan.hardening.slowing = std::nullopt;  // a stop among the checks says so
  CHECK(text::hardening(plan).empty());
}

TEST_CASE("what the cold does is said with its air and what each step waits for", "[text]") {
  Plan plan = potting_bench_plan();
  plan.hardening.slowing = 1.4;
  CHECK(says(plan, "In this air (68 F) the slab takes 1.4 times as long as the bag says."));
  plan.hardening.coldest = Temperature::fahrenheit(40);
  CHECK(says(plan, "(40 F at night, 68 F by day)"));
  CHECK(says(plan, "strip     the bag's\n"));
  plan.hardening.milestones[0].from = std::nullopt;
  CHECK_FALSE(says(plan, "strip "));
}

TEST_CASE("strengths to expect and the latest start are said in the units of the plan", "[text]") {
  Plan plan = potting_bench_plan();
  plan.hardening.expected = {{"strip", {hours(1), hours(1), psi(400)}},
                             {"3 d", {days(3), days(3), psi(2000)}}};
  CHECK(says(plan, "from the bag's: 400 psi when it is stripped, 2000 psi after 3 d."));
  CHECK_FALSE(says(plan, "Begin the pour"));
  plan.hardening.start_by = "2026-05-02T07:10:00";
  CHECK(says(plan, "Begin the pour by 2026-05-02 07:10 at the latest"));
}
