// SPDX-License-Identifier: MIT
#include "strikeoff/odds.h"

#include <catch2/catch.hpp>
#include <cmath>
#include <limits>

#include "strikeoff/render.h"
#include "support/odds_job.h"

using namespace strikeoff;
using test::a_pour_job;
using test::a_pour_plan;
using test::a_retarder;
using test::no_spreads;

namespace {

UsualBad both(double value) {
  return {minutes(value), minutes(value)};
}

/// Placing sets the beat, 3 min, and water goes in just as the batch before starts being placed, so
/// a joint waits 3 + 6 = 9 min, and all of it grows with the crew's pace.
Job a_job_in_step(double working_time) {
  Job job = a_pour_job();
  job.crew.times = {both(0), both(2), both(0.5), both(0), both(0.5), both(0), both(3)};
  job.mix.working_time = minutes(working_time);
  return job;
}

/// A job whose minutes vary.
Job a_usual_job() {
  Job job = a_pour_job();
  const auto time = [](double usual, double bad) { return UsualBad{minutes(usual), minutes(bad)}; };
  job.crew.times = {time(1, 1.6),   time(3, 4),   time(0.5, 0.8), time(0.5, 1),
                    time(0.5, 0.9), time(0.5, 1), time(3, 5)};
  job.mix.final_set = minutes(45);
  job.crew.pour_within = minutes(40);
  return job;
}

double normal_distribution(double z) {
  return 0.5 * std::erfc(-z / std::sqrt(2.0));
}

bool covers_chance(const Chance& chance, double expected) {
  return chance.low <= expected && expected <= chance.high;
}

}  // namespace

TEST_CASE("without spreads every pour is the plan") {
  Job job = a_pour_job();
  job.mix.working_time = minutes(21);
  const Plan plan = a_pour_plan(job, 6);
  const Odds odds = simulate(job, plan, {.runs = 3, .spreads = no_spreads()});
  CHECK(odds.end->p5.si() == Approx(plan.pour.end.si()).epsilon(1e-12));
  CHECK(odds.end->p95 == odds.end->p5);
  CHECK(odds.worst_wait->p50.si() == Approx(plan.pour.edge_wait_max.si()).epsilon(1e-12));
  CHECK(in_minutes(odds.margin->p50) == Approx(21 - 12));
  CHECK(odds.cold_joint->times == 0);
  CHECK(odds.stiff_batch->times == 0);
  CHECK(odds.short_of_mix.times == 0);
  CHECK(odds.drivers.empty());
}

// ln wait is normal with the pace's spread, ln of the working time with those of day and batch, so
// the one joint is cold with chance Phi(ln(9/W)/sqrt(0.12^2 + 0.10^2 + 0.05^2)).
TEST_CASE("the intervals cover the exact chance of lognormal against lognormal") {
  Spreads spreads = no_spreads();
  spreads.crew_pace = 0.12;
  spreads.working_time = 0.10;
  spreads.batch_working_time = 0.05;
  int intervals = 0, covering = 0;
  for (const double working_time : {8.0, 10.0, 11.0, 13.0}) {
    const double exact =
        normal_distribution(std::log(9 / working_time) / std::sqrt(0.0144 + 0.01 + 0.0025));
    const Job job = a_job_in_step(working_time);
    const Plan plan = a_pour_plan(job, 2);
    for (std::uint64_t seed = 1; seed <= 10; ++seed) {
      const Odds odds = simulate(job, plan, {.runs = 4'000, .seed = seed, .spreads = spreads});
      // Four standard errors: one seed in ten thousand is as far out.
      const double error = std::sqrt(exact * (1 - exact) / 4'000);
      CHECK(odds.cold_joint->share == Approx(exact).margin(4 * error));
      covering += covers_chance(*odds.cold_joint, exact) ? 1 : 0;
      ++intervals;
    }
  }
  // Of 40 intervals of 95 % 38 are expected to cover it, fewer than 33 less than once in 1000
  // times.
  CHECK(covering >= 33);
  CHECK(intervals == 40);
}

// A stop in either batch adds its 4 min to the wait of 9, beyond the 11 min there are.
TEST_CASE("stops of the drill come as often as they should") {
  Spreads spreads = no_spreads();
  spreads.drill_stop = 0.02;
  const Job job = a_job_in_step(11);
  const Odds odds = simulate(job, a_pour_plan(job, 2), {.runs = 50'000, .spreads = spreads});
  CHECK(covers_chance(*odds.cold_joint, 1 - 0.98 * 0.98));
  CHECK(in_minutes(odds.worst_wait->p50) == Approx(9));
}

// Four batches of one bag; the forms take 3.5/1.1 = 3.18 bags, 4 % less for each 4 % a bag yields
// less: short with chance Phi(ln(3.18/4)/s).
TEST_CASE("the interval covers the exact chance of bags that yield too little") {
  Spreads spreads = no_spreads();
  spreads.yield = 0.15;
  Job job = a_job_in_step(20);
  job.spare_bags = 1;
  const Odds odds = simulate(job, a_pour_plan(job, 4), {.runs = 50'000, .spreads = spreads});
  const auto exact = [](double bags) {
    return normal_distribution(std::log(3.5 / 1.1 / bags) / 0.15);
  };
  CHECK(covers_chance(odds.short_of_mix, exact(4)));
  CHECK(covers_chance(odds.short_with_spare, exact(5)));
  // 3.18 exp(1.645 x 0.15) = 4.07
  CHECK(odds.bags_needed == 5);
}

// Independent parts of the variance of ln(wait/W): 0.12^2 and 0.10^2.
TEST_CASE("each input is blamed for its part of the spread") {
  Spreads spreads = no_spreads();
  spreads.crew_pace = 0.12;
  spreads.working_time = 0.10;
  const Job job = a_job_in_step(11);
  const Odds odds = simulate(job, a_pour_plan(job, 2), {.runs = 20'000, .spreads = spreads});
  REQUIRE(odds.drivers.size() == 2);
  CHECK(odds.drivers[0].name == "pace of the crew that day");
  CHECK(odds.drivers[0].share == Approx(0.0144 / 0.0244).margin(0.02));
  CHECK(odds.drivers[1].share == Approx(0.0100 / 0.0244).margin(0.02));
  CHECK(odds.unexplained == Approx(0).margin(0.02));
}

TEST_CASE("the odds are the same for any number of threads") {
  const Job job = a_usual_job();
  const Plan plan = a_pour_plan(job, 12);
  const auto odds = [&](int threads) {
    return render_json(simulate(job, plan, {.runs = 5'000, .seed = 7, .threads = threads}));
  };
  const std::string one = odds(1);
  CHECK(odds(2) == one);
  CHECK(odds(4) == one);
  CHECK(render_json(simulate(job, plan, {.runs = 5'000, .seed = 8})) != one);
}

TEST_CASE("more working time never adds a cold joint and a slower crew never takes one away") {
  Job job = a_usual_job();
  std::int64_t before = std::numeric_limits<std::int64_t>::max();
  for (const double working_time : {12.0, 14.0, 16.0, 20.0, 30.0}) {
    job.mix.working_time = minutes(working_time);
    const Odds odds = simulate(job, a_pour_plan(job, 6), {.runs = 2'000});
    CHECK(odds.cold_joint->times < before);
    before = odds.cold_joint->times;
  }
  job.mix.working_time = minutes(18);
  const Odds quick = simulate(job, a_pour_plan(job, 6), {.runs = 2'000});
  job.crew.times.place.bad = minutes(9);
  const Odds slow = simulate(job, a_pour_plan(job, 6), {.runs = 2'000});
  CHECK(slow.cold_joint->times > quick.cold_joint->times);
}

TEST_CASE("the working time sought is just enough for the risk") {
  Job job = a_usual_job();
  job.mix.working_time = minutes(15);
  const auto wrong = [](const Odds& odds) {
    return std::max(odds.cold_joint->share, odds.stiff_batch->share);
  };
  const Odds odds = simulate(job, a_pour_plan(job, 6), {.runs = 4'000});
  CHECK(wrong(odds) > 0.05);
  job.mix.working_time = odds.remedy->working_time * 1.0001;
  CHECK(wrong(simulate(job, a_pour_plan(job, 6), {.runs = 4'000})) <= 0.05);
  job.mix.working_time = odds.remedy->working_time * 0.99;
  CHECK(wrong(simulate(job, a_pour_plan(job, 6), {.runs = 4'000})) > 0.05);
}

TEST_CASE("the dose sought is the least step for the risk") {
  Job job = a_usual_job();
  job.mix.working_time = minutes(10);
  job.additives = {a_retarder()};  // 15 min a dose, in steps of 0.5, at most 4
  job.additives.front().per_bag = 0;
  const Odds odds = simulate(job, a_pour_plan(job, 6), {.runs = 4'000});
  REQUIRE(odds.remedy->doses);
  CHECK(odds.remedy->enough);
  CHECK(odds.remedy->planned == 0);
  job.additives.front().per_bag = *odds.remedy->doses;
  CHECK(simulate(job, a_pour_plan(job, 6), {.runs = 4'000}).cold_joint->share <= 0.05);
  job.additives.front().per_bag = *odds.remedy->doses - 0.5;
  CHECK(simulate(job, a_pour_plan(job, 6), {.runs = 4'000}).cold_joint->share > 0.05);
}

TEST_CASE("when the most retarder is not enough the odds say so") {
  Job job = a_usual_job();
  job.mix.working_time = minutes(4);
  job.additives = {a_retarder()};
  job.additives.front().most = 0.5;
  const Odds odds = simulate(job, a_pour_plan(job, 6), {.runs = 500});
  CHECK(*odds.remedy->doses == 0.5);
  CHECK_FALSE(odds.remedy->enough);
  CHECK(odds.advice.front().find("not enough") != std::string::npos);
}

TEST_CASE("trowelling is late when the mix sets first") {
  Job job = a_pour_job();
  job.mix.final_set = minutes(500);
  CHECK(simulate(job, a_pour_plan(job, 4), {.runs = 200}).late_trowel->times == 0);
  job.mix.final_set = minutes(20.1);
  CHECK(simulate(job, a_pour_plan(job, 4), {.runs = 200}).late_trowel->times == 200);
  job.mix.final_set.reset();
  CHECK_FALSE(simulate(job, a_pour_plan(job, 4), {.runs = 200}).late_trowel);
}

TEST_CASE("the joint of the slow batch is the worst") {
  const Job job = a_usual_job();
  const Odds odds = simulate(job, a_pour_plan(job, 6), {.runs = 2'000});
  REQUIRE(odds.joints.size() == 5);
  double sum = 0;
  for (const JointShare& joint : odds.joints) {
    CHECK(joint.second == joint.first + 1);
    sum += joint.worst.share;
  }
  CHECK(sum == Approx(1));
  CHECK(odds.joints[0].worst.times >= odds.joints[4].worst.times);
}

TEST_CASE("what cannot be known has no chance and the odds say why") {
  Job job = a_usual_job();
  job.mix.working_time.reset();
  Odds odds = simulate(job, a_pour_plan(job, 4), {.runs = 200});
  CHECK_FALSE(odds.cold_joint);
  CHECK_FALSE(odds.remedy);
  CHECK(odds.overrun);
  CHECK(odds.worst_wait);
  CHECK(odds.unknown.at(0).find("no working time") != std::string::npos);

  job = a_usual_job();
  odds = simulate(job, a_pour_plan(job, 1), {.runs = 200});
  CHECK_FALSE(odds.cold_joint);
  CHECK(odds.stiff_batch);
  CHECK(odds.unknown.at(0) == "There is one batch, so no joint can go cold.");

  job.crew.people = {{Role::place}};
  odds = simulate(job, a_pour_plan(job, 4), {.runs = 200});
  CHECK_FALSE(odds.end);
  CHECK(odds.short_of_mix.runs == 200);
  CHECK(odds.unknown.at(0) ==
        "In this crew nobody mixes or carries, so there is no timetable and only the mix can be "
        "judged.");
}

TEST_CASE("options out of range are refused") {
  const Job job = a_pour_job();
  const Plan plan = a_pour_plan(job, 2);
  CHECK_THROWS_AS(simulate(job, plan, {.runs = 0}), std::invalid_argument);
  CHECK_THROWS_AS(simulate(job, plan, {.runs = most_runs + 1}), std::invalid_argument);
  CHECK_THROWS_AS(simulate(job, plan, {.threads = 0}), std::invalid_argument);
  CHECK_THROWS_AS(simulate(job, plan, {.risk = 1}), std::invalid_argument);
  Spreads spreads;
  spreads.crew_pace = std::numeric_limits<double>::quiet_NaN();
  CHECK_THROWS_AS(simulate(job, plan, {.spreads = spreads}), std::invalid_argument);
}

TEST_CASE("progress counts up to the last pour") {
  const Job job = a_pour_job();
  std::int64_t last = 0;
  OddsOptions options{.runs = 2'000};
  options.progress = [&](std::int64_t done) {
    CHECK(done > last);
    last = done;
  };
  static_cast<void>(simulate(job, a_pour_plan(job, 2), options));
  CHECK(last == 2'000);
}
