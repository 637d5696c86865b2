// SPDX-License-Identifier: MIT
#include <catch2/catch.hpp>

#include "checks/checks.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

Check pour_check(const Job& job, const Plan& plan, const std::string& code) {
  const Check check = find_check(pour_checks(job, plan), code);
  REQUIRE(check.code == code);
  return check;
}

/// The bench poured with this lead: edge wait lead + 5 min.
Plan with_lead(double lead_minutes) {
  Plan plan = potting_bench_plan();
  set_batches(plan, 4, minutes(5), minutes(lead_minutes));
  return plan;
}

}  // namespace

TEST_CASE("a joint at the very limit holds and just past it is a cold joint", "[checks]") {
  const Job job = potting_bench_job();  // 12 min usable
  CHECK(pour_check(job, with_lead(7), "cold-joint").level == Level::ok);
  const Check late = pour_check(job, with_lead(7.001), "cold-joint");
  CHECK(late.level == Level::stop);
  CHECK(*late.value == Approx(12.001));
  CHECK(*late.limit == Approx(12));
  CHECK(late.unit == "min");
}

TEST_CASE("a cold joint says by how much and what sets the pace", "[checks]") {
  const Check late = pour_check(potting_bench_job(), with_lead(10), "cold-joint");
  CHECK(late.advice ==
        "3 min too long. Speed up the mixer (one batch every 5 min now), carry less far, mix "
        "smaller batches, use colder water, or a retarder within its label.");
  CHECK(late.basis.rfind("wait = 1 x takt 5 min + lead 10 min", 0) == 0);
}

TEST_CASE("the margin asked for comes off what a joint may use", "[checks]") {
  Job job = potting_bench_job();
  job.limits.margin = minutes(1);
  CHECK(pour_check(job, with_lead(6), "cold-joint").level == Level::ok);
  CHECK(pour_check(job, with_lead(6.01), "cold-joint").level == Level::stop);
}

TEST_CASE("an assumed gap is never ok", "[checks]") {
  Plan plan = with_lead(5);
  plan.pour.gap_is_assumed = true;
  CHECK(pour_check(potting_bench_job(), plan, "cold-joint").level == Level::caution);
  plan = with_lead(9);
  plan.pour.gap_is_assumed = true;
  CHECK(pour_check(potting_bench_job(), plan, "cold-joint").level == Level::stop);
}

TEST_CASE("without a working time the values stand as cautions", "[checks]") {
  Plan plan = with_lead(7);
  plan.pour.working_time = plan.pour.usable = plan.pour.margin = std::nullopt;
  for (const char* code : {"cold-joint", "own-age", "strike-off", "trowel-window"}) {
    const Check check = pour_check(potting_bench_job(), plan, code);
    CAPTURE(code);
    CHECK(check.level == Level::caution);
    CHECK_FALSE(check.limit);
    CHECK_FALSE(check.advice.empty());
  }
  CHECK(*pour_check(potting_bench_job(), plan, "cold-joint").value == Approx(12));
}

TEST_CASE("one batch has no joints", "[checks]") {
  Plan plan = potting_bench_plan();
  set_batches(plan, 1, minutes(5), minutes(7));
  CHECK(pour_check(potting_bench_job(), plan, "cold-joint").level == Level::ok);
}

TEST_CASE("a batch may be as old as the usable time and no older", "[checks]") {
  const Job job = potting_bench_job();
  CHECK(pour_check(job, with_lead(12), "own-age").level == Level::ok);
  CHECK(pour_check(job, with_lead(12.01), "own-age").level == Level::stop);
}

TEST_CASE("strike-off is judged at the end when that fits else behind the front", "[checks]") {
  const Job job = potting_bench_job();
  const Check behind = pour_check(job, with_lead(7), "strike-off");
  CHECK(behind.level == Level::ok);
  CHECK(*behind.value == Approx(12));
  CHECK(pour_check(job, with_lead(7.01), "strike-off").level == Level::stop);

  Plan quick = potting_bench_plan();
  set_batches(quick, 2, minutes(5), minutes(7));
  CHECK(pour_check(job, quick, "strike-off").title == "The whole top can be struck off at the end");
}

TEST_CASE("the top is trowelled at once up to the first zone's final set", "[checks]") {
  const Job job = potting_bench_job();  // stiff at 20 min, final set at 40
  Plan plan = potting_bench_plan();
  set_batches(plan, 5, minutes(5), minutes(7));
  CHECK(pour_check(job, plan, "trowel-window").level == Level::ok);
  set_batches(plan, 5, minutes(5.01), minutes(7));
  const Check zones = pour_check(job, plan, "trowel-window");
  CHECK(zones.level == Level::caution);
  CHECK(zones.advice.rfind("Each zone has 20 min", 0) == 0);
}

TEST_CASE("a final set no later than the working time leaves no time to trowel", "[checks]") {
  Job job = potting_bench_job();
  job.mix.final_set = minutes(20);
  CHECK(pour_check(job, potting_bench_plan(), "trowel-window").level == Level::stop);
  job.mix.final_set = minutes(36);
  CHECK(pour_check(job, potting_bench_plan(), "trowel-window").level == Level::ok);
}

TEST_CASE("finishers who also pour are missing only where zones are trowelled one by one",
          "[checks]") {
  Job job = potting_bench_job();
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place, Role::finish}};
  Plan plan = potting_bench_plan();  // the pour ends at 22, the first zone is stiff at 20
  CHECK(pour_check(job, plan, "trowel-window").level == Level::ok);
  job.mix.final_set = minutes(34);  // before the last zone is stiff, at 15 + 20
  const auto somebody = [&] {
    const std::string advice = pour_check(job, plan, "trowel-window").advice;
    return advice.find("somebody must trowel") != std::string::npos;
  };
  CHECK(pour_check(job, plan, "trowel-window").level == Level::caution);
  CHECK(somebody());
  plan.pour.working_time = minutes(22);
  CHECK_FALSE(somebody());
  job.crew.people.push_back({Role::finish});
  plan.pour.working_time = minutes(20);
  CHECK_FALSE(somebody());
}

TEST_CASE("the pour must end within the time given and is unchecked without one", "[checks]") {
  Job job = potting_bench_job();
  const Plan plan = potting_bench_plan();  // ends at 22 min
  CHECK(find_check(pour_checks(job, plan), "pour-end").code.empty());
  job.crew.pour_within = minutes(22);
  CHECK(pour_check(job, plan, "pour-end").level == Level::ok);
  job.crew.pour_within = minutes(21.9);
  CHECK(pour_check(job, plan, "pour-end").level == Level::stop);
}

TEST_CASE("a role nobody has stops the pour and is named", "[checks]") {
  Job job = potting_bench_job();
  CHECK(pour_check(job, potting_bench_plan(), "crew").level == Level::ok);
  job.crew.people = {{Role::mix}, {Role::place}};
  const Check crew = pour_check(job, potting_bench_plan(), "crew");
  CHECK(crew.level == Level::stop);
  CHECK(crew.title == "The crew is not complete: nobody carries, nobody finishes");
}

TEST_CASE("a beat that is only a lower bound is a caution", "[checks]") {
  Plan plan = potting_bench_plan();
  plan.pour.takt_is_bound = true;
  CHECK(pour_check(potting_bench_job(), plan, "crew").level == Level::caution);
}
