// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>
#include <cmath>

#include "hardening/hardening.h"
#include "support/random_outlines.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

AirCycle random_air(Draw& draw, int least, int most) {
  AirCycle air;
  for (Temperature& at : air.at) at = Temperature::celsius(draw.whole(least, most));
  return air;
}

Duration random_time(Draw& draw) {
  return minutes(std::exp(draw.whole(0, 1100) / 100.0));  // up to 41 d
}

std::vector<StrengthAt> random_points(Draw& draw, int number) {
  std::vector<StrengthAt> points;
  Duration age = hours(draw.whole(2, 40));
  double strength = draw.whole(1, 20);
  for (int i = 0; i < number; ++i) {
    points.push_back({age, megapascals(strength)});
    age = age * (1 + draw.whole(10, 300) / 100.0);
    strength += draw.whole(1, 15);
  }
  return points;
}

constexpr Temperature label = Temperature::celsius(20);

}  // namespace

TEST_CASE("an age reached is the age asked for", "[hardening]") {
  Draw draw(1);
  for (int i = 0; i < 2000; ++i) {
    const AgeClock clock(random_air(draw, -5, 30), minutes(draw.whole(0, 3000)), label,
                         usual_activation_energy);
    const Duration asked = random_time(draw);
    const auto age = clock.reached(asked);
    if (!age) continue;
    CHECK(*age >= asked - seconds(1e-6));
    CHECK(clock.equivalent(*age).si() == Approx(asked.si()).epsilon(1e-9));
    CHECK(clock.equivalent(*age - seconds(1)) < asked);  // the first moment
  }
}

TEST_CASE("colder air never lets anything begin sooner", "[hardening]") {
  Draw draw(2);
  for (int i = 0; i < 2000; ++i) {
    const AirCycle air = random_air(draw, -5, 35);
    AirCycle colder = air;
    for (Temperature& at : colder.at) at = Temperature::celsius(at.in_c() - draw.whole(0, 5));
    const Duration start = minutes(draw.whole(0, 1439)), asked = random_time(draw);
    const auto warm = AgeClock(air, start, label, usual_activation_energy).reached(asked);
    const auto cold = AgeClock(colder, start, label, usual_activation_energy).reached(asked);
    if (cold) CHECK(*warm <= *cold + seconds(1e-6));
  }
}

TEST_CASE("whoever begins later or retards more is never done sooner", "[hardening]") {
  Draw draw(3);
  for (int i = 0; i < 300; ++i) {
    Job job = potting_bench_job();
    job.site.air = Temperature::celsius(draw.whole(5, 25));
    job.site.night = Temperature::celsius(draw.whole(-3, 5));
    job.mix.strength = random_points(draw, draw.whole(0, 2));
    Plan plan = potting_bench_plan();
    const Duration start = minutes(draw.whole(0, 1439));
    const HardeningPlan before = plan_hardening(job, plan.slabs, plan.pour, start);
    const Duration more = minutes(draw.whole(1, 300));
    const HardeningPlan later = plan_hardening(job, plan.slabs, plan.pour, start + more);
    plan.pour.working_time = *plan.pour.working_time + more;
    const HardeningPlan retarded = plan_hardening(job, plan.slabs, plan.pour, start);
    for (const Milestone& step : before.milestones) {
      const auto other = milestone(later, step.step)->from;
      const auto slow = milestone(retarded, step.step)->from;
      if (!step.from) continue;
      CAPTURE(step.step);
      if (other) CHECK(*other + more >= *step.from - seconds(1e-6));
      if (slow) CHECK(*slow >= *step.from - seconds(1e-6));
    }
  }
}

TEST_CASE("strength never falls and its age is found again", "[hardening]") {
  Draw draw(4);
  int curves = 0;
  for (int i = 0; i < 60; ++i) {
    const auto points = random_points(draw, draw.whole(1, 5));
    const std::optional<Duration> set =
        draw.one_in(4) ? std::nullopt : std::optional(minutes(draw.whole(10, 110)));
    const StrengthCurve curve = fit_strength(points, set).value();
    if (curve.law != StrengthCurve::Law::steps) ++curves;
    Pressure before;
    for (double hour = 0.5; hour < 2000; hour *= 1.3) {
      const Pressure strength = strength_at(curve, hours(hour));
      CHECK(strength >= before);
      before = strength;
      const auto age = age_of(curve, strength);
      REQUIRE(age);
      CHECK(*age <= hours(hour * (1 + 1e-9)));
      CHECK(strength_at(curve, *age * (1 + 1e-12)).si() ==
            Approx(strength.si()).epsilon(1e-6).margin(1));
    }
    CHECK_FALSE(age_of(curve, before * 1.001));
  }
  CHECK(curves > 10);
}

TEST_CASE("a curve through two points goes through both", "[hardening]") {
  Draw draw(5);
  int curves = 0;
  for (int i = 0; i < 500; ++i) {
    const auto points = random_points(draw, 2);
    const StrengthCurve curve = fit_strength(points, minutes(draw.whole(10, 110))).value();
    if (curve.law == StrengthCurve::Law::steps) continue;
    ++curves;
    for (const StrengthAt& point : points) {
      CHECK(strength_at(curve, point.age).si() == Approx(point.strength.si()).epsilon(1e-9));
    }
  }
  CHECK(curves > 100);
}
