// SPDX-License-Identifier: MIT
#include "pour/search.h"

#include <catch2/catch.hpp>
#include <cmath>

#include "mix/mix.h"
#include "pour/pour.h"
#include "support/pour_job.h"

using namespace strikeoff;
using test::a_pour_job;
using test::a_retarder;
using test::a_slab;

namespace {

/// The potting bench: 78 1/4 x 26 1/4 in, 1 3/4 in at the edge, 45.10411 L over its panel: 3.98
/// bags.
SlabPlan bench() {
  SlabPlan slab = a_slab(Length::inches(78.25), Length::inches(26.25), Length::inches(1.75));
  slab.concrete = litres(45.10411);
  return slab;
}

/// A job with its slab, and everything that asks about its pour.
struct Asked {
  explicit Asked(Job of, const SlabPlan& slab = bench())
      : job(with(std::move(of), slab)),
        mix(plan_mix(job, slab.concrete)),
        cutter(job.slabs, {slab}),
        model(job, mix, cutter) {}

  static Job with(Job job, const SlabPlan& slab) {
    job.slabs = test::slabs_of({slab});
    return job;
  }

  [[nodiscard]] Settled settled() const { return settle(job, model); }
  [[nodiscard]] Outlook outlook(double bags) const {
    Setup setup = setup_of(job);
    setup.crew = with_bags(setup.crew, bags);
    return model.exact(setup);
  }

  Job job;
  MixPlan mix;
  ZoneCutter cutter;
  PourModel model;
};

Job any_bags() {
  Job job = a_pour_job();
  job.open.bags_per_batch = true;
  return job;
}

double bags_of(const Settled& settled) {
  return settled.job.crew.bags_per_batch;
}

}  // namespace

TEST_CASE("a job that leaves nothing open is settled as it is", "[search]") {
  const Asked asked(a_pour_job());
  const Settled settled = asked.settled();
  CHECK(settled.job == asked.job);
  CHECK(settled.choices.empty());
}

TEST_CASE("the best batch lies between one that takes long and one that waits long", "[search]") {
  // Times of one bag: load 1, mix 3, tip out 1/2, reset 1/2, carry and return 1/2, place 3.
  // Half a bag: mixer 1/2 + 3 + 1/4 + 1/2 = 4.25, lead 3 + 1/4 + 1/2 + 1.5 = 5.25; 8 batches:
  //   edges wait 9.5, the pour ends after 7 x 4.25 + 5.25 = 35 min.
  // One: mixer 5, lead 7; 4 batches: 12 and 22 min. Two: mixer 6.5, lead 10.5; 2 batches: 17
  // and 17.
  Job job = any_bags();
  job.crew.pour_within = minutes(30);
  const Asked asked(job);
  CHECK(in_minutes(asked.outlook(0.5).demand.wait) == Approx(9.5));
  CHECK(in_minutes(asked.outlook(0.5).end) == Approx(35));
  CHECK(in_minutes(asked.outlook(1).demand.wait) == Approx(12));
  CHECK(in_minutes(asked.outlook(1).end) == Approx(22));
  CHECK(in_minutes(asked.outlook(2).demand.wait) == Approx(17));
  CHECK(in_minutes(asked.outlook(2).end) == Approx(17));
  // 0.6 x 20 = 12 min may be used: one bag and no other.
  const Settled settled = asked.settled();
  CHECK(bags_of(settled) == 1);
  CHECK_FALSE(settled.job.open.any());
  REQUIRE(settled.choices.size() == 1);
  CHECK(settled.choices[0].path == "/crew/bags_per_batch");
  CHECK(settled.choices[0].reason ==
        "1 bag a batch: 1/2 bag would be 5 min short; 2 bags would be 5 min short.");
}

TEST_CASE("half bags are taken only where no whole bag works", "[search]") {
  Job job = any_bags();
  job.limits.margin = minutes(1);  // one bag leaves none
  CHECK(bags_of(Asked(job).settled()) == 0.5);
  job.additives = {a_retarder()};  // half a dose mends it
  CHECK(bags_of(Asked(job).settled()) == 1);
  job.mix.bag = kilograms(19);  // a light bag is never halved
  job.additives.clear();
  CHECK(bags_of(Asked(job).settled()) == 1);
}

TEST_CASE("bags are chosen up to what the mixer holds", "[search]") {
  Job job = any_bags();
  const Asked asked(job);  // 60 kg are two bags of 22.7 kg; four are needed
  CHECK(bag_sizes(asked.job, asked.mix) == std::vector<double>{0.5, 1, 2});
  job.crew.mixer_capacity = asked.mix.yield * 3.0;
  CHECK(bag_sizes(job, asked.mix) == std::vector<double>{0.5, 1, 2, 3});
  job.crew.mixer_capacity = asked.mix.yield * 2.99;
  CHECK(bag_sizes(job, asked.mix) == std::vector<double>{0.5, 1, 2});
  job.crew.mixer_capacity = asked.mix.yield * 100.0;
  CHECK(bag_sizes(job, asked.mix) == std::vector<double>{0.5, 1, 2, 3, 4});
  job.crew.mixer_capacity = asked.mix.yield * 0.4;
  CHECK(bag_sizes(job, asked.mix) == std::vector<double>{0.5, 1});
}

TEST_CASE("without a working time nothing is searched", "[search]") {
  Job job = any_bags();
  job.mix.working_time.reset();
  job.open.mixers = job.open.water_temperature = job.open.ice = true;
  job.open.counted = {Role::mix, Role::place};
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place}};
  const Asked asked(job);
  const Settled settled = asked.settled();
  CHECK(bags_of(settled) == 1);
  CHECK(settled.job.crew.mixers == 1);
  CHECK(settled.job.crew.people.size() == 3);
  CHECK(settled.job.site == asked.job.site);
  CHECK_THAT(settled.choices.at(0).reason, Catch::Contains("gives no working time"));
}

TEST_CASE("as few people and mixers are taken as work", "[search]") {
  Job job = a_pour_job();
  job.open.counted = {Role::mix, Role::carry, Role::place, Role::finish};
  job.open.mixers = true;
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place}, {Role::finish}};
  const auto pours = [](const Settled& settled) {
    return holders(settled.job.crew.people, Role::mix) +
           holders(settled.job.crew.people, Role::carry) +
           holders(settled.job.crew.people, Role::place);
  };
  const Settled easy = Asked(job).settled();
  CHECK(pours(easy) == 3);
  CHECK(easy.job.crew.mixers == 1);
  // A takt of 5 is a minute too slow; two mixers need two who mix: takt 3, set by who places.
  job.limits.margin = minutes(1);
  const Settled hard = Asked(job).settled();
  CHECK(holders(hard.job.crew.people, Role::mix) == 2);
  CHECK(pours(hard) == 4);
  CHECK(hard.job.crew.mixers == 2);
  CHECK(hard.choices.back().path == "/crew/finishing");
}

TEST_CASE("open roles are shared the quickest way", "[search]") {
  Job job = a_pour_job();
  job.open.sharing = true;
  job.crew.people.assign(2, {Role::mix, Role::carry, Role::place, Role::finish});
  // One mixes (5 min with the mixer); the other tips out, walks and places: 4.5 min.
  const Settled settled = Asked(job).settled();
  CHECK(settled.job.crew.people ==
        std::vector<std::vector<Role>>{{Role::mix}, {Role::carry, Role::place, Role::finish}});
}

TEST_CASE("water is cooled no further than it must be", "[search]") {
  Job job = a_pour_job();
  job.open.water_temperature = true;
  job.site.water_temperature = Temperature::celsius(15);
  job.site.air = job.site.bag_temperature = Temperature::celsius(27);
  const Asked hot(job);
  const Temperature chosen = hot.settled().job.site.water_temperature;
  CHECK(chosen < Temperature::celsius(15));
  Setup setup = setup_of(hot.job);
  setup.water = chosen;
  CHECK(hot.model.exact(setup).works);
  setup.water = Temperature::celsius(chosen.in_c() + 1);
  CHECK_FALSE(hot.model.exact(setup).works);
  job.site.air = job.site.bag_temperature = Temperature::celsius(15);
  CHECK(Asked(job).settled().job.site.water_temperature == Temperature::celsius(15));
}

TEST_CASE("ice is taken in steps of a twentieth of the water and a fifth at most", "[search]") {
  Job job = a_pour_job();
  job.open.ice = true;
  job.site.air = job.site.bag_temperature = Temperature::celsius(27);
  const Asked hot(job);
  const Mass water = hot.mix.water_per_bag * water_density;
  const double part = hot.settled().job.site.ice.si() / water.si();
  CHECK(part == Approx(0.05 * std::round(part / 0.05)));
  Setup setup = setup_of(hot.job);
  setup.ice = water * part;
  CHECK(hot.model.exact(setup).works);
  setup.ice = water * (part - 0.05);
  CHECK_FALSE(hot.model.exact(setup).works);
  job.site.bag_temperature = Temperature::celsius(45);
  const Asked hopeless(job);
  CHECK(hopeless.settled().job.site.ice.si() == Approx(0.2 * water.si()));
}

TEST_CASE("a hot day fails without a retarder and works with the least dose", "[search]") {
  // Bags at 32 C and water at 20 C: the mix is warm and the 12 min are shorter than the wait of 12.
  Job job = a_pour_job();
  job.site.air = job.site.bag_temperature = Temperature::celsius(32);
  job.site.water_temperature = Temperature::celsius(20);
  CHECK_FALSE(Asked(job).outlook(1).works);
  job.additives = {a_retarder()};
  const Asked asked(job);
  const Outlook with = asked.outlook(1);
  CHECK(with.works);
  CHECK(with.dose > 0);
  Job less = job;
  less.additives[0].per_bag = with.dose - 0.5;
  CHECK_FALSE(Asked(less).outlook(1).works);
}

TEST_CASE("nonsense is settled in bounded time", "[search]") {
  Job job = any_bags();
  job.open.counted = {Role::mix, Role::carry, Role::place};
  job.open.mixers = job.open.water_temperature = job.open.ice = true;
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place}, {Role::finish}};
  SECTION("zero times") {
    job.crew.times = {};
  }
  SECTION("a working time shorter than mixing") {
    job.mix.working_time = minutes(1);
  }
  SECTION("nobody") {
    job.crew.people.clear();
    job.open.counted.clear();
  }
  const Asked asked(job);
  CHECK_FALSE(asked.settled().job.open.any());
}

TEST_CASE("thousands of batches are settled in bounded time", "[search]") {
  Job job = any_bags();
  job.crew.mixer_capacity = litres(30);
  const Asked asked(job, a_slab(Length::m(40), Length::m(10), Length::mm(100)));
  // Two bags: fewer would be more than 500 batches.
  CHECK(bag_sizes(asked.job, asked.mix) == std::vector<double>{2});
  CHECK(bags_of(asked.settled()) == 2);
}
