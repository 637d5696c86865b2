// SPDX-License-Identifier: MIT
// The rest of a pour against the plan it came from and against its own laws, over random crews.
// Fixed seeds.
#include <catch2/catch.hpp>

#include "pour/crew.h"
#include "strikeoff/planner.h"
#include "support/resume_job.h"
#include "support/slabs.h"

using namespace strikeoff;

namespace {

Job random_pour(test::Draw& draw) {
  const std::vector<std::vector<std::vector<Role>>> crews = {
      {{Role::mix}, {Role::carry}, {Role::place}},
      {{Role::mix}, {Role::mix}, {Role::carry}, {Role::place}},
      {{Role::mix, Role::carry, Role::place}},
      {{Role::mix}, {Role::carry, Role::place}},
      {{Role::mix, Role::carry}, {Role::place}},
      {{Role::mix}, {Role::carry}, {Role::place}, {Role::place}}};
  Job job = test::a_job_underway();
  job.crew.people = crews[static_cast<std::size_t>(draw.whole(0, 5))];
  job.crew.mixers = draw.whole(1, 2);
  Times& times = job.crew.times;
  for (UsualBad* time : {&times.load, &times.mix, &times.discharge, &times.reset, &times.carry,
                         &times.back, &times.place}) {
    time->usual = time->bad = seconds(draw.whole(2, 24) * 10);
  }
  job.mix.yield = litres(draw.whole(5, 20));
  job.mix.working_time = minutes(300);
  return job;
}

/// The log of a pour that went as planned until this batch got its water.
PourLog as_planned(const Plan& plan, std::size_t begun) {
  PourLog log;
  log.now = plan.batches[begun - 1].contact;
  for (std::size_t i = 0; i < begun; ++i) {
    LoggedBatch batch;
    batch.number = static_cast<int>(i) + 1;
    batch.contact = plan.batches[i].contact;
    if (plan.batches[i].place_end <= log.now) batch.placed = plan.batches[i].place_end;
    log.batches.push_back(batch);
  }
  return log;
}

}  // namespace

TEST_CASE("a pour that went as planned goes on as planned") {
  test::Draw draw(61);
  for (int round = 0; round < 40; ++round) {
    const Job job = random_pour(draw);
    const Plan plan = make_plan(job);
    const auto begun = static_cast<std::size_t>(draw.whole(1, plan.pour.batches));
    const PourLog log = as_planned(plan, begun);
    CAPTURE(round, begun, plan.pour.batches);
    const Resume rest = resume(job, shipped_catalogue(), log);
    REQUIRE(rest.rest.batches.size() + static_cast<std::size_t>(rest.placed) ==
            plan.batches.size());
    for (const Batch& batch : rest.rest.batches) {
      const Batch& planned = plan.batches[static_cast<std::size_t>(batch.number - 1)];
      CAPTURE(batch.number);
      CHECK(in_minutes(batch.contact) == Approx(in_minutes(planned.contact)).margin(1e-6));
      CHECK(in_minutes(batch.place_end) == Approx(in_minutes(planned.place_end)).margin(1e-6));
      CHECK(batch.zone / planned.zone == Approx(1));
      CHECK(batch.water == planned.water);
      CHECK(batch.neighbours == planned.neighbours);
    }
  }
}

TEST_CASE("going on later never makes a joint wait less nor the pour end sooner") {
  test::Draw draw(62);
  for (int round = 0; round < 20; ++round) {
    const Job job = random_pour(draw);
    const Plan plan = make_plan(job);
    PourLog log = as_planned(plan, static_cast<std::size_t>(draw.whole(1, plan.pour.batches)));
    const Resume before = resume(job, shipped_catalogue(), log);
    log.now += minutes(draw.whole(1, 20));
    const Resume after = resume(job, shipped_catalogue(), log);
    CAPTURE(round);
    CHECK(after.rest.pour.end.si() >= before.rest.pour.end.si() - 1e-6);
    CHECK(after.rest.pour.edge_wait_max.si() >= before.rest.pour.edge_wait_max.si() - 1e-6);
    for (const Batch& batch : after.rest.batches) {
      if (batch.number > after.begun) CHECK(batch.contact >= log.now);
    }
  }
}
