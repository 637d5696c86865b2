// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "loads/handling.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Check lift(const Job& job, Plan plan, const std::string& about) {
  plan.handling = plan_handling(job, plan);
  for (const Check& check : lift_checks(job, plan)) {
    if (check.about == about) return check;
  }
  return {};
}

Check bag_lift(Mass bag) {
  Job job = potting_bench_job();
  job.mix.bag = bag;
  return lift(job, potting_bench_plan(), "bag");
}

Plan batches_of(Mass mass) {
  Plan plan = potting_bench_plan();
  for (Batch& batch : plan.batches) {
    batch.dry = mass;
    batch.water = Volume{};
  }
  return plan;
}

}  // namespace

// The limit from the floor to the mixer is 12.93 kg: see the tests of handling.
TEST_CASE("a bag over the recommended weight is a caution and one under it is not", "[checks]") {
  const Check light = bag_lift(kilograms(12.9));
  CHECK(light.level == Level::ok);
  CHECK(light.title == "A bag can be lifted from the floor to the mixer by one person");
  CHECK((light.unit == "kg" && light.code == "lift"));
  CHECK(*light.value == Approx(12.9));
  CHECK(*light.limit == Approx(12.93).epsilon(1e-3));
  const Check heavy = bag_lift(kilograms(13));
  CHECK(heavy.level == Level::caution);
  CHECK(
      heavy.title ==
      "A bag is heavy to lift from the floor to the mixer: 28.7 lb a person, recommended are 28.5 "
      "lb");
  CHECK(heavy.advice ==
        "Lift it with 2 people, or open it where it lies and lift it in 2 parts. From a stack at "
        "waist height beside the mixer the limit is 41.6 lb.");
}

// Index 3 is 38.79 kg.
TEST_CASE("words get firmer above three times the recommended weight", "[checks]") {
  CHECK(bag_lift(kilograms(38.7)).title.find("is heavy") != std::string::npos);
  const Check check = bag_lift(kilograms(38.9));
  CHECK(check.level == Level::caution);
  CHECK(check.title.find("is far too heavy") != std::string::npos);
  CHECK(check.advice.rfind(
            "Backs are hurt like this. Open it where it lies and lift it in 4 parts.", 0) == 0);
}

TEST_CASE("the job's own lifting limit counts only where stricter", "[checks]") {
  Job job = potting_bench_job();
  job.mix.bag = kilograms(12);
  job.limits.lift = kilograms(11);
  const Check own = lift(job, potting_bench_plan(), "bag");
  CHECK(own.level == Level::caution);
  CHECK(*own.limit == 11);
  CHECK(own.title.find("your limit is 24.3 lb") != std::string::npos);
  job.limits.lift = kilograms(12.5);
  CHECK(lift(job, potting_bench_plan(), "bag").level == Level::ok);
  job.limits.lift = kilograms(40);
  CHECK(*lift(job, potting_bench_plan(), "bag").limit == Approx(12.93).epsilon(1e-3));
  job.limits.lift = kilograms(5);  // three parts of 4 kg
  CHECK(lift(job, potting_bench_plan(), "bag")
            .advice.rfind("Open it where it lies and lift it in 3 parts.", 0) == 0);
}

TEST_CASE("a batch is shared by the people who carry", "[checks]") {
  Job job = potting_bench_job();
  CHECK(lift(job, batches_of(kilograms(24)), "batch").level == Level::caution);
  job.crew.people.push_back({Role::carry});
  const Check shared = lift(job, batches_of(kilograms(24)), "batch");
  CHECK(*shared.value == Approx(12));
  CHECK(shared.level == Level::ok);
  CHECK(shared.title ==
        "A batch, shared by 2, can be lifted from the floor to the form by one person");
  CHECK(shared.advice.empty());
  CHECK(lift(job, batches_of(kilograms(24.2)), "batch").level == Level::caution);
}

// 12.07 kg at 0.18 lifts a minute; in two, 0.36 a minute: 11.87 kg; in three, 0.55: 11.69 kg.
TEST_CASE("a heavy batch is carried in buckets that one person can lift", "[checks]") {
  const auto advice = [&](double kg) {
    return lift(potting_bench_job(), batches_of(kilograms(kg)), "batch").advice;
  };
  CHECK(advice(12).empty());
  CHECK(advice(12.2) ==
        "Carry it in 2 buckets, wheel it, or mix beside the form. Never twist with a full bucket.");
  CHECK(advice(23.7).rfind("Carry it in 2 buckets", 0) == 0);
  CHECK(advice(23.8).rfind("Carry it in 3 buckets", 0) == 0);
}

TEST_CASE("lifts too fast for any load are answered without an index", "[checks]") {
  Plan plan = potting_bench_plan();
  set_batches(plan, 400, minutes(0.05), minutes(3));
  const Check check = lift(potting_bench_job(), plan, "bag");
  CHECK(check.level == Level::caution);
  CHECK(*check.limit == 0);
  CHECK(check.advice.find("No part is small enough at this pace") != std::string::npos);
}

// 6000 kg in a day: ISO 11228-1, from memory.
TEST_CASE("whoever lifts more than six tonnes in a day is told", "[checks]") {
  Plan plan = potting_bench_plan();
  plan.handling.people.resize(2);
  plan.handling.people.back().name = "person 2";
  const auto day = [&](double kg) {
    plan.handling.people.back().mass = kilograms(kg);
    return find_check(lift_checks(potting_bench_job(), plan), "handling-day");
  };
  CHECK(day(6000).level == Level::ok);
  CHECK((*day(6000).value == 6000 && *day(6000).limit == 6000 && day(6000).unit == "kg"));
  CHECK(day(5).title == "Of all, person 2 lifts most over the day: 11 lb");
  CHECK(day(6001).level == Level::caution);
  CHECK_FALSE(day(6001).advice.empty());
  plan.handling.people.clear();
  CHECK(find_check(lift_checks(potting_bench_job(), plan), "handling-day").code.empty());
}
