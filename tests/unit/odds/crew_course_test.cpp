// SPDX-License-Identifier: MIT
#include "odds/crew_course.h"

#include <catch2/catch.hpp>

#include "pour/crew.h"
#include "support/odds_job.h"

using namespace strikeoff;
using test::a_pour_job;
using test::a_pour_plan;

namespace {

/// The furthest any time of the course is from the plan's, at the usual times.
double furthest(const Job& job, const Plan& plan) {
  CrewCourse course(job.crew, plan.batches);
  course.pour([&](std::size_t) { return usual_times(job.crew.times); });
  double most = 0;
  for (std::size_t i = 0; i < plan.batches.size(); ++i) {
    most = std::max({most, std::abs(course.contact(i) - plan.batches[i].contact.si()),
                     std::abs(course.placed(i) - plan.batches[i].place_end.si())});
  }
  return most;
}

}  // namespace

TEST_CASE("at the usual times the course of the pour is the plan's timetable") {
  Job job = a_pour_job();
  const auto both = [](double value) { return UsualBad{minutes(value), minutes(value)}; };
  const std::vector<Times> pours{
      {both(1), both(3), both(0.5), both(0.5), both(0.5), both(0.5), both(3)},
      {both(0.4), both(3.1), both(0.7), both(0.2), both(1.3), both(0.9), both(7)},
      {both(2), both(6), both(0.3), both(1.1), both(4), both(3.5), both(0.6)}};
  int crews = 0;
  for (const Times& times : pours) {
    for (int mixers = 1; mixers <= 3; ++mixers) {
      for (int people = 1; people <= 4; ++people) {
        for (const auto& crew : consecutive_crews(people)) {
          job.crew.times = times;
          job.crew.mixers = mixers;
          job.crew.people = crew;
          INFO(describe(crew) << ", mixers " << mixers << ", mix " << in_minutes(times.mix.usual));
          CHECK(furthest(job, a_pour_plan(job, 8)) < 1e-6);
          ++crews;
        }
      }
    }
  }
  CHECK(crews > 100);
}

// Mixer 1 + 3 + 0.5 + 0.5 = 5 min a batch, placer 3: water at 0, 5, 10. Batch 1 is mixed 2 min
// longer: discharged at 5.5, placed 6 to 9; the mixer is clean and loaded at 7, and the rule, 1 min
// after batch 1 starts being placed, also says 7. Batch 3 follows at 12.
TEST_CASE("a slow batch holds back those behind it") {
  const Job job = a_pour_job();
  const Plan plan = a_pour_plan(job, 3);
  CrewCourse course(job.crew, plan.batches);
  course.pour([&](std::size_t i) {
    OperationTimes t = usual_times(job.crew.times);
    if (i == 0) t.mix += 120;
    return t;
  });
  CHECK(course.contact(1) == Approx(7 * 60));
  CHECK(course.contact(2) == Approx(12 * 60));
  CHECK(course.placed(0) == Approx(9 * 60));
  CHECK(course.placed(2) == Approx(19 * 60));
}

// The placer's 7 min set the beat; batch 1 takes 12 to place, 4 to 16. Batch 2 had its water at 7,
// 3 min after batch 1 started being placed (7 - 3 - 0.5 - 0.5), and waits from 11 to 16; batch 3
// is kept dry until 3 min after that.
TEST_CASE("a batch is kept dry while the one before it waits to be placed") {
  Job job = a_pour_job();
  job.crew.times.place = {minutes(7), minutes(7)};
  const Plan plan = a_pour_plan(job, 3);
  CrewCourse course(job.crew, plan.batches);
  course.pour([&](std::size_t i) {
    OperationTimes t = usual_times(job.crew.times);
    if (i == 0) t.place = 12 * 60;
    return t;
  });
  CHECK(course.contact(1) == Approx(7 * 60));
  CHECK(course.placed(1) == Approx(23 * 60));
  CHECK(course.contact(2) == Approx(19 * 60));
}

TEST_CASE("who mixes and places but does not carry does one thing at a time") {
  Job job = a_pour_job();
  job.crew.people = {{Role::mix, Role::place}, {Role::carry}};
  const Plan plan = a_pour_plan(job, 3);
  CrewCourse course(job.crew, plan.batches);
  course.pour([&](std::size_t) { return usual_times(job.crew.times); });
  // Placed at 7; then 0.5 to clean and 1 to load: the next water at 8.5, though the plan's beat,
  // which is a bound, says 8.
  CHECK(course.contact(1) == Approx(8.5 * 60));
}
