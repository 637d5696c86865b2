// SPDX-License-Identifier: MIT
#include "hardening/hardening.h"

#include <catch2/catch.hpp>

#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

/// The potting bench's mix at 20 C, in this air; its pour ends at 22 min.
Job bench_in(double air) {
  Job job = potting_bench_job();
  job.units = Units::metric;
  job.mix.at = Temperature::celsius(20);
  job.site.air = Temperature::celsius(air);
  return job;
}

HardeningPlan hardened(const Job& job, const Plan& plan = potting_bench_plan()) {
  return plan_hardening(job, plan.slabs, plan.pour, start_of_pour(job));
}

Milestone step(const HardeningPlan& plan, const char* name) {
  const Milestone* found = milestone(plan, name);
  return found == nullptr ? Milestone{} : *found;
}

double from_minutes(const HardeningPlan& plan, const char* name) {
  return in_minutes(step(plan, name).from.value());
}

std::vector<StrengthAt> two_points() {
  return {{hours(24), megapascals(14)}, {days(28), megapascals(38)}};
}

}  // namespace

// At 10 C against 20 C Nurse-Saul over 0 C halves the rate; Arrhenius at 40 kJ/mol is milder.
TEST_CASE("cold makes every later time longer and warmth makes none shorter", "[hardening]") {
  const HardeningPlan cold = hardened(bench_in(10));
  CHECK(cold.slowing.value() == Approx(2));
  CHECK(from_minutes(cold, "strip") == Approx(22 + 240));
  CHECK(from_minutes(cold, "sand") == Approx(22 + 480));
  CHECK(from_minutes(cold, "full use") == Approx(22 + 56 * 1440));
  CHECK(step(cold, "strip").reason == "the bag's 2 h, longer in the cold: 2 times");
  const HardeningPlan warm = hardened(bench_in(35));
  CHECK(warm.slowing.value() == 1);
  CHECK(from_minutes(warm, "strip") == Approx(22 + 120));
  CHECK(step(warm, "strip").reason == "the bag's 2 h");
}

TEST_CASE("cold tap water does not slow what happens days after the pour", "[hardening]") {
  Plan plan = potting_bench_plan();
  plan.pour.mix_temperature = Temperature::celsius(10);
  CHECK(hardened(bench_in(20), plan).slowing.value() == 1);
}

TEST_CASE("a retarder moves every later time by what it adds", "[hardening]") {
  Plan plan = potting_bench_plan();
  plan.pour.working_time = minutes(37);
  const HardeningPlan later = hardened(bench_in(20), plan);
  CHECK(from_minutes(later, "strip") == Approx(22 + 15 + 120));
  CHECK(from_minutes(later, "seal") == Approx(22 + 15 + 2160));
  CHECK(step(later, "strip").reason == "the bag's 2 h and 15 min more for the retarder");
  plan.pour.working_time = minutes(15);  // what hastens the mix hastens nothing here
  CHECK(from_minutes(hardened(bench_in(20), plan), "strip") == Approx(22 + 120));
}

TEST_CASE("what the bag does not say stays unknown", "[hardening]") {
  Job job = bench_in(20);
  job.mix.strip_after = job.mix.full_service = std::nullopt;
  const HardeningPlan plan = hardened(job);
  CHECK_FALSE(step(plan, "strip").from);
  CHECK(step(plan, "strip").reason == "the bag does not say");
  CHECK_FALSE(step(plan, "full use").from);
  CHECK(step(plan, "sand").from);
  CHECK(milestone(plan, "light use") == nullptr);
  CHECK(milestone(plan, "props") == nullptr);
  CHECK(plan.curve.empty());
  CHECK(plan.strength.empty());
}

// The curve of two points and a set at 45 min: 2 MPa with x = t - 45 min: slope (1/14 - 1/38) /
// (1/23.25 - 1/671.25) = 1.08651, level 1/14 - 1.08651/23.25 = 0.0246972; 2 MPa at
// 1/x = (1/2 - 0.0246972) / 1.08651, x = 2.28592 h, and 10 MPa at x = 14.428 h.
TEST_CASE("the later of the bag's time and the strength counts", "[hardening]") {
  Job job = bench_in(20);
  job.mix.strength = two_points();
  const HardeningPlan plan = hardened(job);
  CHECK(plan.curve == "hyperbolic");
  CHECK(in_megapascals(plan.ultimate.value()) == Approx(1 / 0.0246972).epsilon(0.0001));
  const double set_to_2 = (0.75 + 2.28592) * 60;
  CHECK(from_minutes(plan, "strip") == Approx(22 + set_to_2).epsilon(0.0001));
  CHECK(step(plan, "strip").reason ==
        "2 MPa by the bag's strengths, an estimate, later than the bag's 2 h");
  CHECK(from_minutes(plan, "light use") == Approx(22 + (0.75 + 14.428) * 60).epsilon(0.0001));
  job.mix.strip_after = hours(4);
  CHECK(from_minutes(hardened(job), "strip") == Approx(22 + 240));
  job.mix.strip_after = std::nullopt;
  CHECK(from_minutes(hardened(job), "strip") == Approx(22 + set_to_2).epsilon(0.0001));
  CHECK(step(plan, "sand").from == minutes(22 + 240));  // needs no strength
}

TEST_CASE("forms stay longer where it can freeze", "[hardening]") {
  Job job = bench_in(20);
  job.site.night = Temperature::celsius(0.1);
  CHECK(step(hardened(job), "strip").strength == megapascals(2));
  job.site.night = Temperature::celsius(0);
  CHECK(step(hardened(job), "strip").strength == megapascals(5));
}

TEST_CASE("one strength alone serves a use without a time and nothing else", "[hardening]") {
  Job job = bench_in(20);
  job.mix.strength = {{days(28), megapascals(38)}};
  HardeningPlan plan = hardened(job);
  CHECK(plan.curve == "steps");
  CHECK_FALSE(plan.ultimate);
  CHECK(plan.expected.empty());
  REQUIRE(plan.strength.size() == 1);
  CHECK(from_minutes(plan, "strip") == Approx(22 + 120));
  CHECK(from_minutes(plan, "light use") == Approx(22 + 28 * 1440));
  job.mix.strip_after = job.mix.full_service = std::nullopt;
  plan = hardened(job);
  CHECK_FALSE(step(plan, "strip").from);
  CHECK(from_minutes(plan, "full use") == Approx(22 + 28 * 1440));
  job.mix.strength = {{days(28), megapascals(19)}};
  CHECK_FALSE(step(hardened(job), "full use").from);
  CHECK(step(hardened(job), "full use").reason ==
        "the bag names no time, and its strengths do not tell when it has 20 MPa");
}

TEST_CASE("props wait for a week or the full use and for 10 MPa", "[hardening]") {
  Plan bench = potting_bench_plan();
  bench.slabs.front().forms.props = 4;
  Job job = bench_in(20);
  job.mix.full_service = hours(30);
  CHECK(from_minutes(hardened(job, bench), "props") == Approx(22 + 30 * 60));
  job.mix.strip_after = hours(18);  // ordinary
  CHECK(from_minutes(hardened(job, bench), "props") == Approx(22 + 7 * 1440));
  job.mix.strength = {{days(7), megapascals(8)}, {days(28), megapascals(20)}};
  CHECK(from_minutes(hardened(job, bench), "props") > 22 + 7 * 1440);
  CHECK(step(hardened(job, bench), "props").reason ==
        "10 MPa by the bag's strengths, an estimate, later than for soffits 7 d");
}

TEST_CASE("nothing hardens in frost and hardly in a year near it", "[hardening]") {
  const HardeningPlan frozen = hardened(bench_in(0));
  CHECK_FALSE(frozen.slowing);
  CHECK_FALSE(step(frozen, "strip").from);
  CHECK(step(frozen, "strip").reason == "nothing hardens at 0 C or colder");
  Job job = bench_in(0);
  job.mix.strength = two_points();
  CHECK_FALSE(step(hardened(job), "strip").from);
  CHECK(hardened(job).strength.size() == 24);        // all 0: nothing is gained
  const HardeningPlan near = hardened(bench_in(1));  // 20 times: 28 d are 560
  CHECK(step(near, "strip").from);
  CHECK_FALSE(step(near, "full use").from);
  CHECK(step(near, "full use").reason == "not within a year in this cold");
}

TEST_CASE("the strength to expect stands beside its age in this air", "[hardening]") {
  Job job = bench_in(10);  // twice as slow
  job.mix.strength = two_points();
  const HardeningPlan plan = hardened(job);
  REQUIRE(plan.strength.size() == 24);
  CHECK(in_hours(plan.strength.front().age) == Approx(1));
  CHECK(in_days(plan.strength.back().age) == Approx(56));
  CHECK(in_megapascals(plan.strength.back().strength) == Approx(38));
  REQUIRE(plan.expected.size() == 5);
  CHECK(plan.expected[0].when == "strip");
  CHECK(in_megapascals(plan.expected[0].point.strength) == Approx(2));
  CHECK(plan.expected[1].when == "1 d");
  CHECK(in_hours(plan.expected[1].point.equivalent) == Approx(12));
  job.mix.strength = {{hours(4), megapascals(14)}, {hours(24), megapascals(38)}};
  CHECK(hardened(job).expected.size() == 2);  // the bag says nothing of 3 d
}

TEST_CASE("a night slows what a warm day does not", "[hardening]") {
  Job job = bench_in(20);
  job.site.night = Temperature::celsius(5);
  using namespace std::chrono;
  job.date = StartDate{year{2026} / May / 9, 10h};
  const double morning = from_minutes(hardened(job), "sand");
  job.date->time = 22h;
  CHECK(from_minutes(hardened(job), "sand") > morning + 60);
}

TEST_CASE("a strength asked for is reached as its milestone says", "[hardening]") {
  Job job = bench_in(15);
  job.mix.strength = two_points();
  const PourPlan pour = potting_bench_plan().pour;
  CHECK(when_strong(job, pour, megapascals(10)) == step(hardened(job), "light use").from);
  CHECK_FALSE(when_strong(job, pour, megapascals(40)));
  job.mix.strength.clear();
  CHECK_FALSE(when_strong(job, pour, megapascals(1)));
}
