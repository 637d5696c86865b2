// SPDX-License-Identifier: MIT
#include "loads/handling.h"

#include <catch2/catch.hpp>

#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

LiftPlan lift_of(const Job& job, const Plan& plan, const std::string& name) {
  for (const LiftPlan& lift : plan_handling(job, plan).lifts) {
    if (lift.name == name) return lift;
  }
  return {};
}

}  // namespace

TEST_CASE("a bag is lifted from the floor to the mixer again and again", "[handling]") {
  // Four bags in 22 min: 0.18 a minute, FM 1. H 30.48 cm: 25 / 30.48 = 0.8202. V 15.24 cm:
  // 1 - 0.003 x 59.76 = 0.8207. D 76.2 cm: 0.82 + 4.5 / 76.2 = 0.8791. Fair grip from low: 0.95.
  // 23 x 0.8202 x 0.8207 x 0.8791 x 0.95 = 12.93 kg; 48 lb are 21.77 kg: index 1.684.
  const LiftPlan bag = lift_of(potting_bench_job(), potting_bench_plan(), "bag");
  CHECK(bag.mass.si() == Approx(21.772).epsilon(1e-4));
  CHECK(bag.per_minute == Approx(4 / 22.0));
  CHECK(bag.horizontal == Approx(0.8202).epsilon(1e-3));
  CHECK(bag.vertical == Approx(0.8207).epsilon(1e-3));
  CHECK(bag.distance == Approx(0.8791).epsilon(1e-3));
  CHECK(bag.frequency == 1);
  CHECK(bag.coupling == Approx(0.95));
  CHECK(bag.recommended.si() == Approx(12.93).epsilon(1e-3));
  CHECK(*bag.index == Approx(1.684).epsilon(1e-3));
  // Two halves at 0.36 a minute: FM 1 - 0.03 x 0.1636 / 0.3 = 0.984, 12.72 kg: 10.89 is within.
  CHECK(*bag.parts == 2);
}

TEST_CASE("a batch is lifted in a bucket over the form of a base", "[handling]") {
  // H 20 + 15 cm: 0.7143. V 38 cm: 0.889. D 90 cm: 0.82 + 0.05 = 0.87. Fair, from low: 0.95.
  // 23 x 0.7143 x 0.889 x 0.87 x 0.95 = 12.07 kg; 21.772 kg and 3.502 L: 25.274 kg, index 2.094.
  Job job = potting_bench_job();
  const LiftPlan batch = lift_of(job, potting_bench_plan(), "batch");
  CHECK(batch.mass.si() == Approx(25.274).epsilon(1e-4));
  CHECK(batch.recommended.si() == Approx(12.07).epsilon(1e-3));
  CHECK(*batch.index == Approx(2.094).epsilon(1e-3));
  CHECK(*batch.parts == 3);  // 12.6 kg are too heavy, 8.4 kg are not
  // On the ground it only goes up to where hands carry it: D 37 cm: 0.82 + 4.5 / 37 = 0.9416.
  job.slabs.front().support = Support::ground;
  CHECK(lift_of(job, potting_bench_plan(), "batch").distance == Approx(0.9416).epsilon(1e-3));
}

TEST_CASE("ice is carried like water", "[handling]") {
  Plan plan = potting_bench_plan();
  plan.batches.back().ice = kilograms(1);
  CHECK(lift_of(potting_bench_job(), plan, "batch").mass.si() == Approx(26.274).epsilon(1e-4));
}

TEST_CASE("more hands lift less often or less", "[handling]") {
  Job job = potting_bench_job();
  job.crew.people.push_back({Role::mix, Role::carry});
  const LiftPlan bag = lift_of(job, potting_bench_plan(), "bag");
  CHECK(bag.mass.si() == Approx(21.772).epsilon(1e-4));
  CHECK(bag.per_minute == Approx(2 / 22.0));
  const LiftPlan batch = lift_of(job, potting_bench_plan(), "batch");
  CHECK(batch.mass.si() == Approx(25.274 / 2).epsilon(1e-4));
  CHECK(batch.per_minute == Approx(4 / 22.0));
}

TEST_CASE("a short pour counts as spread over a quarter of an hour", "[handling]") {
  Plan plan = potting_bench_plan();
  set_batches(plan, 1, minutes(5), minutes(7));
  CHECK(lift_of(potting_bench_job(), plan, "bag").per_minute == Approx(1 / 15.0));
}

TEST_CASE("lifts too fast for any load have neither index nor parts", "[handling]") {
  Plan plan = potting_bench_plan();
  set_batches(plan, 400, minutes(0.05), minutes(3));
  const LiftPlan bag = lift_of(potting_bench_job(), plan, "bag");
  CHECK(bag.per_minute > 15);
  CHECK(bag.recommended == Mass{});
  CHECK_FALSE(bag.index);
  CHECK_FALSE(bag.parts);
}

TEST_CASE("without batches nothing is lifted in the pour", "[handling]") {
  Plan plan = potting_bench_plan();
  plan.batches.clear();
  CHECK(plan_handling(potting_bench_job(), plan).lifts.empty());
}

TEST_CASE("the kilograms of each person add up to all that is lifted", "[handling]") {
  // Five bags of 21.772 kg brought in by four people: 27.22 each. Mixing: 4 x 21.772 = 87.09 and
  // 4 x 3.502 = 14.01 of water. Carrying: 101.10.
  const HandlingPlan handling = plan_handling(potting_bench_job(), potting_bench_plan());
  REQUIRE(handling.people.size() == 4);
  const PersonLoad& mixes = handling.people[0];
  CHECK(mixes.name == "person 1");
  CHECK(mixes.bags_in.si() == Approx(27.2155).epsilon(1e-4));
  CHECK(mixes.to_mixer.si() == Approx(87.09).epsilon(1e-4));
  CHECK(mixes.water.si() == Approx(14.008).epsilon(1e-3));
  CHECK(mixes.mass.si() == Approx(128.313).epsilon(1e-4));
  CHECK(handling.people[1].batches.si() == Approx(101.098).epsilon(1e-4));
  CHECK(handling.people[1].mass.si() == Approx(128.313).epsilon(1e-4));
  CHECK(handling.people[3].mass.si() == Approx(27.2155).epsilon(1e-4));
  Mass all;
  for (const PersonLoad& person : handling.people) all += person.mass;
  CHECK(all.si() == Approx(5 * 21.7724 + 2 * 101.098).epsilon(1e-4));
}

TEST_CASE("a stack at waist height lets one lift more", "[handling]") {
  // HM 0.8202, all others 1: 18.86 kg.
  const LiftPlan bag = lift_of(potting_bench_job(), potting_bench_plan(), "bag");
  CHECK(recommended_from_waist(bag).si() == Approx(18.86).epsilon(1e-3));
}
