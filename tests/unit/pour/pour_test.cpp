// SPDX-License-Identifier: MIT
#include "pour/pour.h"

#include <algorithm>
#include <catch2/catch.hpp>

#include "mix/mix.h"
#include "pour/retarder.h"
#include "support/pour_job.h"

using namespace strikeoff;
using test::a_pour_job;
using test::a_retarder;
using test::a_slab;

namespace {

/// The potting bench: 78 1/4 x 26 1/4 in, 1 3/4 in at the edge, 45.10411 L over its panel.
SlabPlan bench() {
  SlabPlan slab = a_slab(Length::inches(78.25), Length::inches(26.25), Length::inches(1.75));
  slab.concrete = litres(45.10411);
  return slab;
}

Pour pour(Job job, const std::vector<SlabPlan>& slabs = {bench()}) {
  Volume concrete;
  for (const SlabPlan& slab : slabs) concrete += slab.concrete;
  job.slabs = test::slabs_of(slabs);
  return plan_pour(job, slabs, plan_mix(job, concrete));
}

}  // namespace

TEST_CASE("the bench is poured in four batches five minutes apart", "[pour]") {
  // takt 5 (mixer), lead 7, gap 1: wait 12; usable 0.6 x 20 = 12, so nothing to spare.
  const Pour p = pour(a_pour_job());
  CHECK(p.plan.batches == 4);
  CHECK(in_minutes(p.plan.takt) == Approx(5));
  CHECK(in_minutes(p.plan.edge_wait_max) == Approx(12));
  CHECK(in_minutes(p.plan.usable.value()) == Approx(12));
  CHECK(in_minutes(p.plan.margin.value()) == Approx(0).margin(1e-9));
  CHECK(p.plan.feasible);
  CHECK(in_minutes(p.plan.end) == Approx(3 * 5 + 7));
  const Batch& second = p.batches.at(1);
  CHECK(in_minutes(second.contact) == Approx(5));
  CHECK(in_minutes(second.place_start) == Approx(9));
  CHECK(in_minutes(second.place_end) == Approx(12));
  CHECK(in_minutes(second.edge_wait) == Approx(12));
  CHECK(p.batches.back().edge_wait == Duration{});
  CHECK(second.neighbours == std::vector<int>{1, 3});
  CHECK(p.plan.joint_length.in_in() == Approx(3 * 26.25));
}

TEST_CASE("only retarders lengthen the working time", "[pour]") {
  Job job = a_pour_job();
  Additive other = a_retarder();
  other.kind = AdditiveKind::plasticizer;
  other.per_bag = 1;
  job.additives = {other};
  CHECK(in_minutes(retarded_by_all(job, minutes(20), 0)) == Approx(20));
  job.additives.front().kind = AdditiveKind::retarder;
  CHECK(in_minutes(retarded_by_all(job, minutes(20), 0)) == Approx(35));
}

TEST_CASE("a margin asked for must be there too", "[pour]") {
  Job job = a_pour_job();
  job.limits.margin = seconds(1);
  CHECK_FALSE(pour(job).plan.feasible);
}

TEST_CASE("every batch gets its share and the books balance", "[pour]") {
  Job job = a_pour_job();
  job.crew.bags_per_batch = GENERATE(0.5, 1.0, 2.0);
  job.crew.bucket = Bucket{Length::mm(250), Length::mm(290), Length::mm(330)};
  job.additives = {a_retarder()};
  job.additives[0].per_bag = 1.5;
  const MixPlan mix = plan_mix(job, litres(45.10411));
  const Pour p = pour(job);
  Volume zones, water, volume;
  Mass dry;
  double doses = 0;
  for (const Batch& batch : p.batches) {
    zones += batch.zone;
    water += batch.water;
    volume += batch.volume;
    dry += batch.dry;
    doses += batch.doses.at(0).doses;
    CHECK(batch.bucket_mark.has_value());
    CHECK(std::get<Mass>(batch.doses[0].amount).si() == Approx(0.025 * batch.doses[0].doses));
  }
  CHECK(in_litres(zones) == Approx(45.10411));
  CHECK(in_litres(water) == Approx(in_litres(mix.water_total)));
  CHECK(in_litres(volume) == Approx(in_litres(mix.yield * mix.bags)));
  CHECK(in_pounds(dry) == Approx(48 * mix.bags));
  CHECK(doses == Approx(dose_totals(job, mix, 0).at(0).total));
}

TEST_CASE("mixers take turns as far as people can run them", "[pour]") {
  Job job = a_pour_job();
  job.crew.mixers = 3;
  job.crew.people = {{Role::mix}, {Role::mix}, {Role::carry}, {Role::place}};
  std::vector<int> mixers;
  for (const Batch& batch : pour(job).batches) mixers.push_back(batch.mixer);
  CHECK(mixers == std::vector<int>{1, 2, 1, 2});
  // One person mixes: the second mixer stands idle.
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place}};
  for (const Batch& batch : pour(job).batches) CHECK(batch.mixer == 1);
}

TEST_CASE("nobody has two things in hand, and every batch goes from hand to hand", "[pour]") {
  const std::vector<std::vector<Role>> crews[] = {
      {{Role::mix}, {Role::carry}, {Role::place}},
      {{Role::mix, Role::carry, Role::place}},
      {{Role::mix, Role::place}, {Role::carry}},
      {{Role::mix}, {Role::mix}, {Role::carry}, {Role::place}, {Role::place}},
      {{Role::mix, Role::carry}, {Role::mix, Role::carry}, {Role::place}}};
  for (const auto& people : crews) {
    Job job = a_pour_job();
    job.crew.mixers = 2;
    job.crew.people = people;
    const Pour poured = pour(job);
    const std::vector<Batch>& batches = poured.batches;
    const std::vector<PersonWork>& work = poured.plan.work;
    REQUIRE(work.size() == 3 * batches.size());
    for (std::size_t i = 0; i < work.size(); ++i) {
      const Batch& batch = batches[i / 3];
      const PersonWork& one = work[i];
      const auto& roles = people.at(static_cast<std::size_t>(one.person) - 1);
      CHECK(one.batch == batch.number);
      CHECK(std::count(roles.begin(), roles.end(), one.role) == 1);
      CHECK(one.start < one.end);
      for (std::size_t j = 0; j < i; ++j) {
        if (work[j].person != one.person) continue;
        const bool apart = in_minutes(work[j].end - one.start) < 1e-6 ||
                           in_minutes(one.end - work[j].start) < 1e-6;
        CHECK(apart);
      }
      if (i % 3 != 2) CHECK(in_minutes(work[i + 1].start - one.end) > -0.5 - 1e-6);  // tipping out
    }
    for (std::size_t i = 0; i < batches.size(); ++i) {
      const Batch& batch = batches[i];
      CHECK(in_minutes(batch.loading) == Approx(in_minutes(work[3 * i].start)));
      CHECK(in_minutes(batch.place_end) == Approx(in_minutes(work[3 * i + 2].end)));
      CHECK(batch.loading < batch.contact);
      for (std::size_t j = 0; j < i; ++j) {
        if (batches[j].mixer == batch.mixer) CHECK(batches[j].emptied < batch.loading);
      }
    }
  }
}

TEST_CASE("cold water lengthens the working time", "[pour]") {
  // 21.7724 kg of bag at 21.111 C and 3.501506 kg of water at 15 C:
  // (4.789935 x 21.1111 + 3.501506 x 15)/8.291441 = 18.5304 C. 30 kJ/mol:
  // exp(30000/8.314 (1/291.6804 - 1/294.2611)) = 1.1146.
  Job job = a_pour_job();
  job.site.water_temperature = Temperature::celsius(15);
  const PourPlan plan = pour(job).plan;
  CHECK(plan.mix_temperature.in_c() == Approx(18.5304).margin(1e-3));
  CHECK(plan.temperature_factor == Approx(1.1146).margin(1e-4));
  CHECK(in_minutes(plan.working_time.value()) == Approx(20 * 1.1146).margin(2e-3));
}

TEST_CASE("an automatic retarder gets the least dose in its steps", "[pour]") {
  // Place 12 min: takt 12, lead 16, wait 28. 0.6 (20 + 15 d) >= 28 from d = 1.78, so 2 doses.
  Job job = a_pour_job();
  job.crew.times.place = {minutes(12), minutes(12)};
  job.additives = {a_retarder()};
  Pour p = pour(job);
  CHECK(p.retarder == 2);
  CHECK(p.plan.retarder_per_bag == 2);
  CHECK(in_minutes(p.plan.usable.value()) == Approx(30));
  CHECK(p.plan.feasible);
  CHECK(p.plan.retarder_reason ==
        "2 doses a bag: the joints wait 28 min, 12 min may be used without it and 30 min with it; "
        "one step less gives 25.5 min.");
  CHECK(p.batches[0].doses.at(0).doses == 2);

  job.additives[0].step = 0.25;  // 1.75 gives 27.75
  CHECK(pour(job).retarder == 2);
  job.limits.margin = minutes(3);
  CHECK(pour(job).retarder == 2.25);  // 31 needed, and 2.25 gives 32.25
}

TEST_CASE("a retarder that is not needed is not dosed", "[pour]") {
  Job job = a_pour_job();
  job.additives = {a_retarder()};
  const Pour p = pour(job);
  CHECK(p.retarder == 0);
  CHECK(p.plan.retarder_reason ==
        "No retarder is needed for the joints: the joints wait 12 min and 12 min may be used "
        "without it.");
}

TEST_CASE("when no dose is enough the plan holds the most and says so", "[pour]") {
  // Five doses are the most: 0.6 (20 + 75) = 57 min; wait 2 x 40 + 4.
  Job job = a_pour_job();
  job.crew.times.place = {minutes(40), minutes(40)};
  job.additives = {a_retarder()};
  const Pour p = pour(job);
  CHECK(p.retarder == 5);
  CHECK_FALSE(p.plan.feasible);
  CHECK(p.plan.retarder_reason ==
        "5 doses a bag is the most it may have, and that is not enough: the joints wait 84 min, "
        "12 min may be used without it and 57 min with it.");
}

TEST_CASE("a fixed dose is taken as the job says and explained", "[pour]") {
  Job job = a_pour_job();
  job.additives = {a_retarder()};
  job.additives[0].per_bag = 0.5;
  const Pour p = pour(job);
  CHECK(in_minutes(p.plan.working_time.value()) == Approx(27.5));
  CHECK(p.plan.retarder_reason ==
        "1/2 dose a bag, as the job says: the joints wait 12 min, 12 min may be used without it "
        "and 16.5 min with it.");
}

TEST_CASE("the minutes of several retarders add up", "[pour]") {
  Job job = a_pour_job();
  job.crew.times.place = {minutes(12), minutes(12)};
  Additive fixed = a_retarder();
  fixed.per_bag = 1;
  job.additives = {fixed, a_retarder()};
  // 0.6 (20 + 15 + 15 d) >= 28 from d = 0.78
  const Pour p = pour(job);
  CHECK(p.retarder == 1);
  CHECK(p.plan.retarder_per_bag == 2);
  CHECK(in_minutes(p.plan.working_time.value()) == Approx(50));
  CHECK(p.plan.retarder_reason ==
        "1 dose a bag beside the 1 dose the job fixes: the joints wait 28 min, 21 min may be used "
        "without it and 30 min with it; one step less gives 25.5 min.");
}

TEST_CASE("without a working time nothing is promised", "[pour]") {
  Job job = a_pour_job();
  job.mix.working_time.reset();
  job.additives = {a_retarder()};
  const Pour p = pour(job);
  CHECK_FALSE(p.plan.working_time);
  CHECK_FALSE(p.plan.usable);
  CHECK_FALSE(p.plan.margin);
  CHECK_FALSE(p.plan.feasible);
  CHECK(p.retarder == 0);
  CHECK(p.plan.retarder_reason ==
        "No dose of retarder can be worked out: the bag gives no working time.");
  CHECK(p.plan.smallest_crew ==
        "How many people it takes is not known: the bag gives no working time.");
}

TEST_CASE("a crew that cannot pour is named and nothing is promised", "[pour]") {
  Job job = a_pour_job();
  job.crew.people = {{Role::mix}, {Role::place}};
  job.additives = {a_retarder()};
  const Pour p = pour(job);
  CHECK(p.plan.takt == Duration{});
  CHECK_FALSE(p.plan.feasible);
  CHECK_FALSE(p.plan.margin);
  CHECK(p.plan.bottleneck == "nobody carries");
  CHECK(p.retarder == 0);
  CHECK(p.plan.water_rule == "Nobody carries, so there is no timetable.");
}

TEST_CASE("a single batch waits for nobody", "[pour]") {
  const Pour p = pour(a_pour_job(), {a_slab(Length::mm(400), Length::mm(400), Length::mm(50))});
  REQUIRE(p.plan.batches == 1);
  CHECK(p.plan.gap == 0);
  CHECK(p.plan.edge_wait_max == Duration{});
  CHECK(in_minutes(p.plan.margin.value()) == Approx(12));
  CHECK(p.plan.feasible);
  CHECK(p.plan.end == p.plan.lead);
}

TEST_CASE("a batch that grows old before it is placed makes the pour fail", "[pour]") {
  // One batch, lead 3 + 0.5 + 0.5 + 9 = 13 > 12 although nothing waits.
  Job job = a_pour_job();
  job.crew.times.place = {minutes(9), minutes(9)};
  const std::vector<SlabPlan> small{a_slab(Length::mm(400), Length::mm(400), Length::mm(50))};
  CHECK_FALSE(pour(job, small).plan.feasible);
  CHECK(pour(job, small).plan.smallest_crew ==
        "No crew of up to 8 people can pour this with 1 mixer: a batch is 13 min old when it is "
        "placed and 12 min may be used.");
  job.additives = {a_retarder()};
  CHECK(pour(job, small).retarder == 0.5);
}

TEST_CASE("the water rule counts from the placing of the batch before", "[pour]") {
  Job job = a_pour_job();
  // takt 5, mix + discharge + carry 4: 1 min after
  CHECK(pour(job).plan.water_rule ==
        "From batch 2 on, keep the batch dry and add its water 1 min after the previous batch "
        "starts being placed.");
  job.crew.mixers = 2;
  job.crew.people = {{Role::mix}, {Role::mix}, {Role::carry}, {Role::place}};
  // takt 3: 1 min before
  CHECK(pour(job).plan.water_rule ==
        "From batch 2 on, keep the batch dry and add its water 1 min before the previous batch "
        "starts being placed, which is 3 min after that batch got its own water. Mixing flat out "
        "would make edges wait 13 min instead of 10 min.");
  job.crew.times.place = {minutes(4), minutes(4)};
  CHECK(pour(job).plan.water_rule ==
        "From batch 2 on, keep the batch dry and add its water just as the previous batch starts "
        "being placed. Mixing flat out would make edges wait 16 min instead of 12 min.");
}

TEST_CASE("the smallest crew that works is found and compared with today's", "[pour]") {
  // One mixer: two people reach takt 5 and wait 12; one alone takes 9, wait 16 > 12.
  CHECK(
      pour(a_pour_job()).plan.smallest_crew ==
      "2 people can pour this with 1 mixer: person 1 mixes; person 2 carries and places, a batch "
      "every 5 min, edges waiting 12 min (fewer cannot; today 3 pour). Lifting and strike-off are "
      "not counted.");
  Job slow = a_pour_job();
  slow.mix.working_time = minutes(40);
  CHECK(pour(slow).plan.smallest_crew ==
        "1 person can pour this with 1 mixer: person 1 mixes, carries and places, a batch every 9 "
        "min, edges waiting 16 min (today 3 pour). Lifting and strike-off are not counted.");
  Job fast = a_pour_job();
  fast.mix.working_time = minutes(19);
  CHECK(pour(fast).plan.smallest_crew ==
        "No crew of up to 8 people can pour this with 1 mixer, held back by the mixer: the joints "
        "wait 12 min and 11.4 min may be used.");
}
