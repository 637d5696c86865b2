// SPDX-License-Identifier: MIT
// Laws of the pour over random crews: fixed seed, our own draws, so every machine sees the same.
#include <catch2/catch.hpp>
#include <cstdint>
#include <random>
#include <vector>

#include "mix/mix.h"
#include "pour/crew.h"
#include "pour/pour.h"
#include "support/pour_job.h"

using namespace strikeoff;
using test::a_pour_job;
using test::a_retarder;
using test::a_slab;

namespace {

class Draw {
 public:
  explicit Draw(std::uint64_t seed) : engine_(seed) {}
  double real(double low, double high) {
    return low + (high - low) * static_cast<double>(engine_() >> 11) / 9007199254740992.0;
  }
  int whole(int low, int high) {
    return low + static_cast<int>(engine_() % static_cast<std::uint64_t>(high - low + 1));
  }

 private:
  std::mt19937_64 engine_;
};

std::vector<UsualBad*> each(Times& t) {
  return {&t.load, &t.mix, &t.discharge, &t.reset, &t.carry, &t.back, &t.place};
}

/// A pour with a consecutive crew, so that takt is exact.
Job random_job(Draw& draw) {
  Job job = a_pour_job();
  for (UsualBad* time : each(job.crew.times)) time->usual = minutes(draw.real(0.1, 5));
  const auto crews = consecutive_crews(draw.whole(1, 6));
  job.crew.people =
      crews[static_cast<std::size_t>(draw.whole(0, static_cast<int>(crews.size()) - 1))];
  job.crew.mixers = draw.whole(1, 3);
  job.mix.working_time = minutes(draw.real(5, 60));
  // Whether rows of cells are taken depends on the time there is; ribbons across the front do not.
  job.crew.least_advance = Length::mm(10);
  job.crew.usable = draw.real(0.4, 1);
  return job;
}

SlabPlan random_slab(Draw& draw) {
  return a_slab(Length::mm(draw.whole(300, 3000)), Length::mm(draw.whole(300, 1500)),
                Length::mm(draw.whole(20, 120)));
}

Pour pour(Job job, const SlabPlan& slab) {
  job.slabs = test::slabs_of({slab});
  return plan_pour(job, {slab}, plan_mix(job, slab.concrete));
}

constexpr int rounds = 300;

}  // namespace

TEST_CASE("no wait falls when any one time rises", "[properties][pour]") {
  Draw draw(1);
  for (int round = 0; round < rounds; ++round) {
    Job job = random_job(draw);
    const SlabPlan slab = random_slab(draw);
    const Pour before = pour(job, slab);
    UsualBad* time = each(job.crew.times)[static_cast<std::size_t>(draw.whole(0, 6))];
    time->usual += minutes(draw.real(0, 3));
    const Pour after = pour(job, slab);
    CAPTURE(round);
    REQUIRE(before.batches.size() == after.batches.size());
    for (std::size_t i = 0; i < after.batches.size(); ++i) {
      CHECK(after.batches[i].edge_wait.si() >= before.batches[i].edge_wait.si() - 1e-9);
    }
    CHECK((before.plan.feasible || !after.plan.feasible));
  }
}

TEST_CASE("a longer working time never needs more retarder nor breaks a pour",
          "[properties][pour]") {
  Draw draw(2);
  for (int round = 0; round < rounds; ++round) {
    Job job = random_job(draw);
    job.additives = {a_retarder()};
    const SlabPlan slab = random_slab(draw);
    const Pour before = pour(job, slab);
    *job.mix.working_time += minutes(draw.real(0, 30));
    const Pour after = pour(job, slab);
    CAPTURE(round);
    CHECK(after.plan.edge_wait_max == before.plan.edge_wait_max);
    CHECK(after.retarder <= before.retarder);
    CHECK((!before.plan.feasible || after.plan.feasible));
  }
}

TEST_CASE("one step less retarder than chosen would fail", "[properties][pour]") {
  Draw draw(3);
  int dosed = 0;
  for (int round = 0; round < rounds; ++round) {
    Job job = random_job(draw);
    job.additives = {a_retarder()};
    job.additives[0].step = draw.whole(1, 4) / 4.0;
    if (draw.whole(0, 1) == 1) job.additives[0].factors = {{1, 1.4}, {2, 2.2}, {4, 3}};
    const SlabPlan slab = random_slab(draw);
    const Pour chosen = pour(job, slab);
    CAPTURE(round);
    CHECK(chosen.retarder <= 5);
    if (chosen.retarder == 0) continue;
    ++dosed;
    job.additives[0].per_bag = chosen.retarder - job.additives[0].step;
    CHECK_FALSE(pour(job, slab).plan.feasible);
    job.additives[0].per_bag = chosen.retarder;
    CHECK(pour(job, slab).plan.feasible == chosen.plan.feasible);
  }
  CHECK(dosed > rounds / 10);
}

TEST_CASE("all times twice as long make all waits twice as long", "[properties][pour]") {
  Draw draw(4);
  for (int round = 0; round < rounds; ++round) {
    Job job = random_job(draw);
    const SlabPlan slab = random_slab(draw);
    const Pour before = pour(job, slab);
    const double scale = draw.real(0.2, 5);
    for (UsualBad* time : each(job.crew.times)) time->usual = time->usual * scale;
    const Pour after = pour(job, slab);
    for (std::size_t i = 0; i < after.batches.size(); ++i) {
      CHECK(after.batches[i].edge_wait.si() ==
            Approx(before.batches[i].edge_wait.si() * scale).margin(1e-8));
    }
  }
}

TEST_CASE("another mixer or another pair of hands never hurts", "[properties][pour]") {
  Draw draw(5);
  for (int round = 0; round < rounds; ++round) {
    Job job = random_job(draw);
    const Duration before = pace(job.crew).takt;
    Crew more = job.crew;
    ++more.mixers;
    CHECK(pace(more).takt.si() <= before.si() * (1 + 1e-12));
    more = job.crew;
    const auto copied =
        static_cast<std::size_t>(draw.whole(0, static_cast<int>(more.people.size()) - 1));
    more.people.push_back(more.people[copied]);
    CHECK(pace(more).takt.si() <= before.si() * (1 + 1e-12));
  }
}

TEST_CASE("the timetable can be worked by the crew it was made for", "[properties][pour]") {
  // Played through: each mixer and each person does one thing at a time and in the order of the
  // batches, a group taking turns. No start may fall before its worker is free.
  Draw draw(6);
  for (int round = 0; round < rounds; ++round) {
    const Job job = random_job(draw);
    const SlabPlan slab = random_slab(draw);
    const Pour p = pour(job, slab);
    const Times& t = job.crew.times;
    std::vector<double> mixer_free(3, -1e9), person_free(job.crew.people.size(), -1e9);
    for (const Batch& batch : p.batches) {
      const double contact = batch.contact.si(), mixed = contact + t.mix.usual.si();
      const double emptied = mixed + t.discharge.usual.si();
      double& machine = mixer_free[static_cast<std::size_t>(batch.mixer - 1)];
      CHECK(contact - t.load.usual.si() >= machine - 1e-6);
      machine = emptied + t.reset.usual.si();
      for (const Role role : {Role::mix, Role::carry, Role::place}) {
        std::vector<std::size_t> group;
        for (std::size_t i = 0; i < job.crew.people.size(); ++i) {
          for (const Role own : job.crew.people[i]) {
            if (own == role) group.push_back(i);
          }
        }
        CHECK_FALSE(group.empty());
        // Someone with several roles is checked by the sum of the work between two batches.
        const std::size_t who = group[static_cast<std::size_t>(batch.number - 1) % group.size()];
        if (job.crew.people[who].size() > 1) continue;
        const double start = role == Role::mix     ? contact - t.load.usual.si()
                             : role == Role::carry ? mixed
                                                   : batch.place_start.si();
        const double end = role == Role::mix     ? emptied + t.reset.usual.si()
                           : role == Role::carry ? emptied + (t.carry.usual + t.back.usual).si()
                                                 : batch.place_end.si();
        CHECK(start >= person_free[who] - 1e-6);
        person_free[who] = end;
      }
    }
  }
}

TEST_CASE("zones hold equal shares of the slab whatever the batches", "[properties][pour]") {
  Draw draw(7);
  for (int round = 0; round < rounds; ++round) {
    Job job = random_job(draw);
    job.crew.bags_per_batch = draw.whole(1, 4) / 2.0;
    const SlabPlan slab = random_slab(draw);
    const Pour p = pour(job, slab);
    Volume sum;
    CAPTURE(round);
    for (const Batch& batch : p.batches) {
      sum += batch.zone;
      double top = 0;
      for (const Zone& zone : batch.zones) top += signed_area(zone.outline).si();
      CHECK(top == Approx(slab.top_area.si() / p.plan.batches).epsilon(1e-8));
    }
    CHECK(sum.si() == Approx(slab.concrete.si()));
    // Fewer batches than mixers and joints may do better than the steady beat.
    const Pace beat = pace(job.crew);
    CHECK(p.plan.edge_wait_max.si() <=
          (beat.takt * p.plan.gap + (p.plan.gap > 0 ? beat.lead : Duration{})).si() + 1e-6);
  }
}
