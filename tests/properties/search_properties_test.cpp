// SPDX-License-Identifier: MIT
// The search against brute force over everything a job leaves open. Fixed seeds, our own draws.
#include <catch2/catch.hpp>
#include <cstdint>
#include <random>

#include "mix/mix.h"
#include "pour/pour.h"
#include "pour/search.h"
#include "support/pour_job.h"

using namespace strikeoff;
using test::a_pour_job;
using test::a_retarder;
using test::a_slab;

namespace {

class Dice {
 public:
  explicit Dice(std::uint64_t seed) : engine_(seed) {}
  double real(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) / 9007199254740992.0;
  }
  int whole(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }

 private:
  std::mt19937_64 engine_;
};

Job random_open_job(Dice& dice) {
  Job job = a_pour_job();
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place}};
  Times& t = job.crew.times;
  for (UsualBad* time : {&t.load, &t.mix, &t.discharge, &t.reset, &t.carry, &t.back, &t.place}) {
    time->usual = minutes(dice.real(0.2, 4));
  }
  job.mix.working_time = minutes(dice.real(8, 60));
  job.site.air = job.site.bag_temperature = Temperature::celsius(dice.real(15, 35));
  job.site.water_temperature = Temperature::celsius(15);
  if (dice.whole(0, 1) == 1) job.additives = {a_retarder()};
  if (dice.whole(0, 2) == 0) job.crew.pour_within = minutes(dice.real(10, 60));
  job.open.bags_per_batch = true;
  job.open.counted = {Role::mix, Role::place};
  job.open.mixers = true;
  job.open.water_temperature = dice.whole(0, 1) == 1;
  return job;
}

/// Every combination there is, one by one.
std::vector<Setup> everything(const Job& job, const PourModel& model) {
  std::vector<Setup> all;
  for (const double bags : bag_sizes(job, model.mix())) {
    for (int mixers = 1; mixers <= 4; ++mixers) {
      for (int mixing = 1; mixing <= 4; ++mixing) {
        for (int placing = 1; placing <= 4; ++placing) {
          for (int colder = 0; colder <= (job.open.water_temperature ? 13 : 0); ++colder) {
            Setup setup{with_bags(job.crew, bags), Temperature::celsius(15 - colder), {}};
            setup.crew.mixers = mixers;
            setup.crew.people.assign(static_cast<std::size_t>(mixing), {Role::mix});
            setup.crew.people.push_back({Role::carry});
            setup.crew.people.insert(setup.crew.people.end(), static_cast<std::size_t>(placing),
                                     {Role::place});
            const Temperature mix = model.mix_temperature(setup.water, {});
            if (colder > 0 && mix < Temperature::celsius(10)) continue;
            all.push_back(std::move(setup));
          }
        }
      }
    }
  }
  return all;
}

}  // namespace

TEST_CASE("the search finds what brute force over every setup finds", "[properties][search]") {
  Dice dice(5);
  int working = 0;
  for (int round = 0; round < 40; ++round) {
    CAPTURE(round);
    Job job = random_open_job(dice);
    const SlabPlan slab =
        a_slab(Length::mm(dice.whole(500, 3000)), Length::mm(600), Length::mm(dice.whole(30, 60)));
    job.slabs = test::slabs_of({slab});
    const MixPlan mix = plan_mix(job, slab.concrete);
    const ZoneCutter cutter(job.slabs, {slab});
    const PourModel model(job, mix, cutter);
    const auto rank = [&](const Setup& setup) { return rank_of(setup, model.quick(setup), model); };
    Rank least = rank(setup_of(job));
    for (const Setup& setup : everything(job, model)) least = std::min(least, rank(setup));
    Rank found = least;
    bool is_first = true;
    for (const Setup& setup : open_setups(job, model)) {
      found = is_first ? rank(setup) : std::min(found, rank(setup));
      is_first = false;
    }
    CHECK(std::get<0>(found) == std::get<0>(least));
    CHECK(std::get<1>(found) == std::get<1>(least));
    if (std::get<0>(least)) continue;
    CHECK(found == least);
    ++working;
  }
  CHECK(working > 10);
  CHECK(working < 40);
}

TEST_CASE("a settled job with an auto retarder has the least dose", "[properties][search]") {
  Dice dice(6);
  int dosed = 0;
  for (int round = 0; round < 60; ++round) {
    CAPTURE(round);
    Job job = random_open_job(dice);
    job.additives = {a_retarder()};
    job.crew.pour_within.reset();
    const SlabPlan slab =
        a_slab(Length::mm(dice.whole(500, 3000)), Length::mm(600), Length::mm(dice.whole(30, 60)));
    job.slabs = test::slabs_of({slab});
    const MixPlan any = plan_mix(job, slab.concrete);
    const ZoneCutter cutter(job.slabs, {slab});
    const PourModel model(job, any, cutter);
    Job settled = settle(job, model).job;
    const MixPlan mix = plan_mix(settled, slab.concrete);
    const Pour pour = plan_pour(settled, mix, model);
    if (!pour.plan.feasible || pour.retarder == 0) continue;
    ++dosed;
    settled.additives[0].per_bag = pour.retarder - 0.5;
    CHECK_FALSE(plan_pour(settled, mix, model).plan.feasible);
  }
  CHECK(dosed > 3);
}
