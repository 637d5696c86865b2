// SPDX-License-Identifier: MIT
#include "pour/setting.h"

#include <catch2/catch.hpp>

#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

TEST_CASE("a retarder moves every later time by what it adds to the working time", "[hardening]") {
  Plan plan = potting_bench_plan();
  plan.pour.working_time = minutes(35);
  const Hardening times = hardening(potting_bench_job(), plan.pour);
  CHECK(in_minutes(*times.stiff) == Approx(35));
  CHECK(in_minutes(*times.final_set) == Approx(40 + 15));
  CHECK(in_minutes(*times.strip) == Approx(60 + 15));
  CHECK(in_minutes(*times.seal) == Approx(24 * 60 + 15));
}

// 40 kJ/mol from 20 C: 1.79 at 10 C, 0.76 at 25 C (Arrhenius, R = 8.314 J/mol K).
TEST_CASE("cold makes stripping later and warmth does not make it earlier", "[hardening]") {
  Job job = potting_bench_job();
  job.mix.at = Temperature::celsius(20);
  Plan plan = potting_bench_plan();
  plan.pour.mix_temperature = Temperature::celsius(25);
  job.site.air = Temperature::celsius(10);
  CHECK(in_minutes(*hardening(job, plan.pour).strip) == Approx(60 * 1.79).epsilon(0.005));
  job.site.air = Temperature::celsius(25);
  CHECK(in_minutes(*hardening(job, plan.pour).strip) == Approx(60));
}

TEST_CASE("cold tap water does not slow what happens days after the pour", "[hardening]") {
  Plan plan = potting_bench_plan();
  plan.pour.mix_temperature = Temperature::celsius(10);
  const Hardening times = hardening(potting_bench_job(), plan.pour);
  CHECK(times.cold_factor == 1);
  CHECK(in_days(*times.full_service) == Approx(28));
}

TEST_CASE("the trowel window closes sooner in a warm mix", "[hardening]") {
  Plan plan = potting_bench_plan();
  plan.pour.temperature_factor = 0.5;
  plan.pour.working_time = minutes(10);
  const Hardening times = hardening(potting_bench_job(), plan.pour);
  CHECK(in_minutes(*times.final_set) == Approx(20));
}

TEST_CASE("what the bag does not say stays unknown", "[hardening]") {
  Job job = potting_bench_job();
  job.mix.strip_after = job.mix.final_set = std::nullopt;
  const Hardening times = hardening(job, potting_bench_plan().pour);
  CHECK_FALSE(times.strip);
  CHECK_FALSE(times.final_set);
  CHECK(times.sand);
}

TEST_CASE("one batch or a pour that ends in time is struck off at the end", "[hardening]") {
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
