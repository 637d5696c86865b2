// SPDX-License-Identifier: MIT
#include "pour/setting.h"

#include <catch2/catch.hpp>

#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

TEST_CASE("a retarder moves stiffness and set by what it adds to the working time", "[setting]") {
  Plan plan = potting_bench_plan();
  plan.pour.working_time = minutes(37);
  const Setting times = setting(potting_bench_job(), plan.pour);
  CHECK(in_minutes(*times.stiff) == Approx(37));
  CHECK(in_minutes(*times.final_set) == Approx(45 + 15));
  CHECK(in_minutes(retarder_delay(potting_bench_job().mix, plan.pour)) == Approx(15));
}

TEST_CASE("the trowel window closes sooner in a warm mix", "[setting]") {
  Plan plan = potting_bench_plan();
  plan.pour.temperature_factor = 0.5;
  plan.pour.working_time = minutes(11);
  CHECK(in_minutes(*setting(potting_bench_job(), plan.pour).final_set) == Approx(22.5));
}

TEST_CASE("a set the bag does not say stays unknown", "[setting]") {
  Job job = potting_bench_job();
  job.mix.final_set = std::nullopt;
  CHECK_FALSE(setting(job, potting_bench_plan().pour).final_set);
  Plan plan = potting_bench_plan();
  plan.pour.working_time = std::nullopt;
  CHECK_FALSE(setting(job, plan.pour).stiff);
  CHECK(retarder_delay(job.mix, plan.pour) == Duration{});
}

TEST_CASE("one batch or a pour that ends in time is struck off at the end", "[setting]") {
  PourPlan pour;
  pour.batches = 1;
  CHECK(strikes_off_at_end(pour));
  pour.batches = 2;
  CHECK_FALSE(strikes_off_at_end(pour));
  pour.usable = minutes(14);
  pour.end = minutes(14);
  CHECK(strikes_off_at_end(pour));
  pour.end = minutes(14.001);
  CHECK_FALSE(strikes_off_at_end(pour));
}
