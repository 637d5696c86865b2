// SPDX-License-Identifier: MIT
#include <algorithm>
#include <catch2/catch.hpp>

#include "basis/basis.h"
#include "checks/checks.h"
#include "support/sample_plan.h"
#include "support/slabs.h"

using namespace strikeoff;
using namespace strikeoff::test;
using Catch::Matchers::Contains;

namespace {

Check pour_check(const Job& job, const Plan& plan, const std::string& code) {
  const Check check = find_check(pour_checks(job, plan), code);
  REQUIRE(check.code == code);
  return check;
}

/// The bench of a mix that can be worked for 20 min, of which 12 may be used, and sets after 40.
Job bench_job() {
  Job job = potting_bench_job();
  job.mix.working_time = minutes(20);
  job.mix.final_set = minutes(40);
  return job;
}

Plan bench_plan() {
  Plan plan = potting_bench_plan();
  plan.pour.working_time = minutes(20);
  plan.pour.usable = minutes(12);
  set_batches(plan, 4, minutes(5), minutes(7));
  return plan;
}

/// The bench poured with this lead: edge wait lead + 5 min.
Plan with_lead(double lead_minutes) {
  Plan plan = bench_plan();
  set_batches(plan, 4, minutes(5), minutes(lead_minutes));
  return plan;
}

}  // namespace

TEST_CASE("a joint at the very limit holds and just past it is a cold joint", "[checks]") {
  const Job job = bench_job();  // 12 min usable
  CHECK(pour_check(job, with_lead(7), "cold-joint").level == Level::ok);
  const Check late = pour_check(job, with_lead(7.001), "cold-joint");
  CHECK(late.level == Level::stop);
  CHECK(*late.value == Approx(12.001));
  CHECK(*late.limit == Approx(12));
  CHECK(late.unit == "min");
}

// 12 min usable: 5 + 10 = 15 min wait; the lead may be 12 - 5, the beat 12 - 10.
TEST_CASE("a cold joint says what its wait is made of and what each part must come down to",
          "[checks]") {
  const Check late = pour_check(bench_job(), with_lead(10), "cold-joint");
  CHECK(late.advice ==
        "3 min too long: 1 x 5 min from batch to batch and 10 min from water to placed (mix 3 min, "
        "tip out 30 s, carry 30 s, place 3 min). The time from water to placed weighs most: bring "
        "it down to 7 min (mix nearer, quicker placing, or half-bag "
        "batches); or start a batch every 2 min (speed up the mixer). Colder water or a retarder "
        "within its label makes the mix last longer.");
  CHECK(late.basis == basis("cold-joint") + ": 1 x takt 5 min + lead 10 min");
}

TEST_CASE("a part of the wait that cannot help alone is said not to", "[checks]") {
  const auto advice = [](double takt, double lead) {
    Plan plan = bench_plan();
    set_batches(plan, 4, minutes(takt), minutes(lead));
    return pour_check(bench_job(), plan, "cold-joint").advice;
  };
  CHECK_THAT(advice(5, 12), Contains("a faster beat alone cannot help"));
  CHECK_THAT(advice(5, 11.9), !Contains("cannot help"));
  CHECK_THAT(advice(12, 5), Contains("The time from batch to batch weighs most: start a batch "
                                     "every 7 min"));
  CHECK_THAT(advice(12, 5), Contains("from water to placed alone cannot help"));
  CHECK_THAT(advice(13, 14), Contains("either alone is over the limit, so shorten both"));
}

TEST_CASE("what a time must come down to is never rounded up", "[checks]") {
  Plan plan = with_lead(10);
  plan.pour.usable = minutes(12.06);
  CHECK_THAT(pour_check(bench_job(), plan, "cold-joint").advice,
             Contains("bring it down to 7 min"));
}

TEST_CASE("half-bag batches are advised only from whole bags on", "[checks]") {
  Job job = bench_job();
  for (const char* code : {"cold-joint", "own-age"}) {
    job.crew.bags_per_batch = 1;
    CHECK_THAT(pour_check(job, with_lead(12.5), "own-age").advice, Contains("half-bag batches"));
    job.crew.bags_per_batch = 0.5;
    CHECK_THAT(pour_check(job, with_lead(12.5), code).advice, !Contains("half-bag"));
  }
}

TEST_CASE("a retarder at its most is not advised", "[checks]") {
  Job job = bench_job();
  Additive retarder;
  retarder.name = "set retarder";
  retarder.most = 2;
  job.additives = {retarder};
  Plan plan = with_lead(10);
  plan.mix.doses = {{"set retarder", AdditiveKind::retarder, 1.5, 6, {}}};
  CHECK_THAT(pour_check(job, plan, "cold-joint").advice, Contains("a retarder within its label"));
  plan.mix.doses.front().per_bag = 2;
  CHECK_THAT(pour_check(job, plan, "cold-joint").advice, Contains("the retarder is at its most"));
}

TEST_CASE("no advice sends the reader to a code word", "[checks]") {
  for (const Check& check : pour_checks(bench_job(), with_lead(20))) {
    CHECK_THAT(check.advice, !Contains("`"));
  }
}

TEST_CASE("an old batch is not cured by more people", "[checks]") {
  const Check old = pour_check(bench_job(), with_lead(13), "own-age");
  CHECK_THAT(old.advice, Contains("1 min too long from water to placed (mix 3 min"));
  CHECK_THAT(old.advice, Contains("bring it down to 12 min"));
  CHECK_THAT(old.advice, Contains("more people or mixers do not help"));
}

TEST_CASE("the margin asked for comes off what a joint may use", "[checks]") {
  Job job = bench_job();
  job.limits.margin = minutes(1);
  CHECK(pour_check(job, with_lead(6), "cold-joint").level == Level::ok);
  CHECK(pour_check(job, with_lead(6.01), "cold-joint").level == Level::stop);
}

TEST_CASE("a joint that ends at a corner of an opening is a caution", "[checks]") {
  const Job job = bench_job();
  Plan plan = with_lead(5);
  SlabPlan& slab = plan.slabs.front();
  const Rectangle sink{{in(20), in(6)}, in(20), in(14)};
  slab.openings = {{outline_of(sink, {}), sink}};
  // 1 3/4 in thick: clear of corners by 100 mm
  const auto joint_at = [&](Length x) {
    plan.pour.joints = {{1, 2, in(7), slab.name, {{x, in(-1)}, {x, in(6)}}, {}, minutes(12)}};
    return pour_check(job, plan, "joint-at-corner");
  };
  CHECK(joint_at(in(20) + mm(101)).level == Level::ok);
  const Check near = joint_at(in(20) + mm(99));
  CHECK(near.level == Level::caution);
  CHECK(*near.value == Approx(99));
  CHECK(*near.limit == Approx(100));
  CHECK_THAT(near.advice, Contains("The joint of batches 1 and 2 ends 3 7/8 in from a corner"));
}

TEST_CASE("a slab without corners that crack has no check of them", "[checks]") {
  const auto checks = pour_checks(bench_job(), with_lead(5));
  CHECK(std::none_of(checks.begin(), checks.end(),
                     [](const Check& check) { return check.code == "joint-at-corner"; }));
}

TEST_CASE("without a working time the values stand as cautions", "[checks]") {
  Plan plan = with_lead(7);
  plan.pour.working_time = plan.pour.usable = plan.pour.margin = std::nullopt;
  for (const char* code : {"cold-joint", "own-age", "strike-off", "trowel-window"}) {
    const Check check = pour_check(bench_job(), plan, code);
    CAPTURE(code);
    CHECK(check.level == Level::caution);
    CHECK_FALSE(check.limit);
    CHECK_FALSE(check.advice.empty());
  }
  CHECK(*pour_check(bench_job(), plan, "cold-joint").value == Approx(12));
}

TEST_CASE("batches that do not touch have no joint to judge", "[checks]") {
  Plan plan = with_lead(9);
  plan.pour.gap = 0;
  plan.pour.edge_wait_max = Duration{};
  plan.pour.usable = plan.pour.working_time = std::nullopt;
  const Check check = pour_check(bench_job(), plan, "cold-joint");
  CHECK(check.level == Level::ok);
  CHECK_FALSE(check.value);
  CHECK(check.title == "No two batches touch: no joints");
}

TEST_CASE("one batch has no joints", "[checks]") {
  Plan plan = bench_plan();
  set_batches(plan, 1, minutes(5), minutes(7));
  CHECK(pour_check(bench_job(), plan, "cold-joint").level == Level::ok);
}

TEST_CASE("a batch may be as old as the usable time and no older", "[checks]") {
  const Job job = bench_job();
  CHECK(pour_check(job, with_lead(12), "own-age").level == Level::ok);
  CHECK(pour_check(job, with_lead(12.01), "own-age").level == Level::stop);
}

TEST_CASE("strike-off is judged at the end when that fits else behind the front", "[checks]") {
  const Job job = bench_job();
  const Check behind = pour_check(job, with_lead(7), "strike-off");
  CHECK(behind.level == Level::ok);
  CHECK(*behind.value == Approx(12));
  CHECK(behind.advice.find("at the end would be 22 min old") != std::string::npos);
  const Check late = pour_check(job, with_lead(8), "strike-off");
  CHECK(late.level == Level::stop);
  CHECK(late.advice.rfind("1 min too late", 0) == 0);
  CHECK(pour_check(job, with_lead(7.01), "strike-off").level == Level::stop);
  Plan single = bench_plan();
  set_batches(single, 1, minutes(5), minutes(13));
  CHECK(pour_check(job, single, "strike-off").level == Level::stop);

  Plan quick = bench_plan();
  set_batches(quick, 2, minutes(5), minutes(7));
  const Check at_end = pour_check(job, quick, "strike-off");
  CHECK(at_end.title == "The whole top can be struck off at the end");
  CHECK(at_end.advice.empty());
}

// A zone of the bench is 0.3313 m2, 0.33 min of work.
TEST_CASE("whoever strikes off needs a free minute for each m2 between two batches", "[checks]") {
  Job job = bench_job();
  const Plan plan = with_lead(7);  // takt 5 min
  CHECK(pour_check(job, plan, "strike-off").level == Level::ok);
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place, Role::finish}};
  const auto placing = [&](double place) {
    job.crew.times.place.usual = minutes(place);
    return pour_check(job, plan, "strike-off");
  };
  CHECK(placing(5 - 0.332).level == Level::ok);
  const Check busy = placing(5 - 0.331);
  CHECK(busy.level == Level::caution);
  CHECK(busy.title == "Nobody is free to strike off while the pour runs");
  CHECK_THAT(busy.advice, Contains("has 20 s between two batches"));
  job.crew.people.push_back({Role::finish});
  CHECK(placing(5).level == Level::ok);
}

TEST_CASE("one who does everything is free to strike off at the end", "[checks]") {
  Job job = bench_job();
  job.crew.people = {{Role::mix, Role::carry, Role::place, Role::finish}};
  Plan quick = bench_plan();
  set_batches(quick, 2, minutes(5), minutes(7));  // ends at the usable 12 min
  CHECK(pour_check(job, quick, "strike-off").level == Level::ok);
  CHECK(pour_check(job, bench_plan(), "strike-off").level == Level::caution);
}

// Four zones of 0.3313 m2 come ready every 5 min from 20 min on; at 8 min/m2 one person needs
// 5.301 min for two passes over each, so the last is done at 20 + 4 x 5.301, 26.20 min old.
TEST_CASE("the top can be trowelled when slow work ends before every final set", "[checks]") {
  Job job = bench_job();
  const double last = 20 + 4 * 0.3313 * 16 - 15;
  job.mix.final_set = minutes(last + 0.01);
  const Plan plan = with_lead(6);  // struck off at 21.3 min, soon enough to trowel the first zone
  const Check ok = pour_check(job, plan, "trowel-window");
  CHECK(ok.level == Level::ok);
  CHECK(ok.title == "There is time to trowel zone by zone, in the order of the batches");
  CHECK(*ok.value == Approx(last).epsilon(1e-4));
  CHECK(*ok.limit == Approx(last + 0.01));
  job.mix.final_set = minutes(last - 0.01);
  CHECK(pour_check(job, plan, "trowel-window").level == Level::caution);
  job.mix.final_set = minutes(15 + 20 + 22);  // 21.2 min for the whole top
  CHECK(pour_check(job, bench_plan(), "trowel-window").title ==
        "The whole top can be trowelled at once");
}

TEST_CASE("trowelling that is too slow says by how much and how many people would do", "[checks]") {
  Job job = bench_job();
  job.mix.final_set = minutes(24);  // 4 min a zone: 2 people need 2.7 each
  const Check late = pour_check(job, bench_plan(), "trowel-window");
  CHECK(late.level == Level::caution);
  CHECK(late.advice ==
        "Two passes over the whole top are 10.6 min to 21.2 min of work for 1 person, and each "
        "zone has 4 min before its final set. At the slow pace the worst zone is 2.2 min too late; "
        "at the quick one it is in time. 2 people who only finish would do at the slow pace.");
}

TEST_CASE("finishers who also pour begin when the pour ends", "[checks]") {
  Job job = bench_job();
  job.crew.people = {{Role::mix}, {Role::carry}, {Role::place, Role::finish}};
  job.mix.final_set = minutes(28);
  // The pour ends at 22 min: the last is done at 22 + 4 x 5.301, 28.20 min old.
  const Check late = pour_check(job, bench_plan(), "trowel-window");
  CHECK(late.level == Level::caution);
  CHECK_THAT(late.advice, Contains("They are free only when the pour ends, at +0:22."));
  job.crew.people.push_back({Role::finish});
  CHECK(pour_check(job, bench_plan(), "trowel-window").level == Level::ok);
}

TEST_CASE("only a top that nobody could trowel in time is a stop", "[checks]") {
  Job job = bench_job();
  const auto level = [&](double final_set) {
    job.mix.final_set = minutes(final_set);
    return pour_check(job, bench_plan(), "trowel-window").level;
  };
  CHECK(level(19) == Level::stop);
  CHECK(level(20) == Level::stop);
  // 20 people at 4 min/m2: 0.1325 min a zone
  CHECK(level(20.132) == Level::stop);
  CHECK(level(20.133) == Level::caution);
}

TEST_CASE("the pour must end within the time given and is unchecked without one", "[checks]") {
  Job job = bench_job();
  const Plan plan = bench_plan();  // ends at 22 min
  CHECK(find_check(pour_checks(job, plan), "pour-end").code.empty());
  job.crew.pour_within = minutes(22);
  CHECK(pour_check(job, plan, "pour-end").level == Level::ok);
  job.crew.pour_within = minutes(21.9);
  CHECK(pour_check(job, plan, "pour-end").level == Level::stop);
}

TEST_CASE("a role nobody has stops the pour and is named", "[checks]") {
  Job job = bench_job();
  CHECK(pour_check(job, bench_plan(), "crew").level == Level::ok);
  job.crew.people = {{Role::mix}, {Role::place}};
  const Check crew = pour_check(job, bench_plan(), "crew");
  CHECK(crew.level == Level::stop);
  CHECK(crew.title == "The crew is not complete: nobody carries");
}

TEST_CASE("a crew that names nobody to finish can pour but must decide who trowels", "[checks]") {
  Job job = bench_job();
  job.crew.people = {{Role::mix}, {Role::carry, Role::place}};
  const Check crew = pour_check(job, bench_plan(), "crew");
  CHECK(crew.level == Level::caution);
  CHECK(crew.title == "Nobody is named to trowel the top");
}
