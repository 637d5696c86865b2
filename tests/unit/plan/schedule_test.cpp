// SPDX-License-Identifier: MIT
#include "plan/schedule.h"

#include <catch2/catch.hpp>

#include <algorithm>
#include <map>

#include "plan/tasks.h"
#include "support/sample_plan.h"

using namespace strikeoff;
using namespace strikeoff::test;

namespace {

std::ptrdiff_t tasks_beginning(const std::vector<Task>& tasks, const std::string& beginning) {
  return std::count_if(tasks.begin(), tasks.end(),
                       [&](const Task& task) { return task.task.rfind(beginning, 0) == 0; });
}

bool mentions(const Task& task, const std::string& words) {
  return task.task.find(words) != std::string::npos;
}

}  // namespace

TEST_CASE("the day begins with the bucket test and a rehearsal with blanks", "[schedule]") {
  const auto tasks = make_schedule(potting_bench_job(), potting_bench_plan());
  CHECK(mentions(tasks[0], "working time ____ min (the plan uses 20 min)"));
  CHECK(mentions(tasks[1], "mix ____ min (3 min)"));
}

TEST_CASE("a task begins only when what it follows is done", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  plan.mix.doses = {{"set retarder", AdditiveKind::retarder, 1, 4, {}}};
  const int batches = GENERATE(1, 4, 6, 70);
  job.mix.strip_after = GENERATE(minutes(60), hours(24));
  set_batches(plan, batches, minutes(5), minutes(7));
  if (GENERATE(false, true)) {
    plan.pour.working_time = plan.pour.usable = plan.pour.margin = std::nullopt;
    job.mix.final_set = job.mix.strip_after = job.mix.seal_after = std::nullopt;
  }
  std::map<std::string, Duration> done;
  for (const Task& task : make_schedule(job, plan)) {
    CAPTURE(batches, task.task);
    for (const std::string& name : task.after) {
      REQUIRE(done.count(name) == 1);
      CHECK(done[name] <= task.start);
    }
    CHECK(task.end >= task.start);
    CHECK(done.emplace(task.task, task.end).second);
  }
}

TEST_CASE("phases come in the order of the day", "[schedule]") {
  std::vector<std::string> phases;
  for (const Task& task : make_schedule(potting_bench_job(), potting_bench_plan())) {
    if (phases.empty() || phases.back() != task.phase) phases.push_back(task.phase);
  }
  CHECK(phases == std::vector<std::string>{"day before", "before mixing", "pour", "finish",
                                           "wet cure", "later"});
}

TEST_CASE("every batch is a task with its people and its minutes", "[schedule]") {
  const auto tasks = make_schedule(potting_bench_job(), potting_bench_plan());
  CHECK(tasks_beginning(tasks, "Batch ") == 4);
  const Task third = find_task(tasks, "Batch 3: ");
  CHECK(in_minutes(third.start) == Approx(10));
  CHECK(in_minutes(third.end) == Approx(17));
  CHECK(third.who == "mix: person 1; carry: person 2; place: person 3");
  CHECK(mentions(third, "place from +0:14"));
}

TEST_CASE("roles are named by number or as missing", "[schedule]") {
  Crew crew;
  crew.people = {{Role::mix, Role::carry}, {Role::carry}, {Role::carry}};
  CHECK(who_has(crew, Role::mix) == "person 1");
  CHECK(who_has(crew, Role::carry) == "persons 1, 2 and 3");
  CHECK(who_has(crew, Role::place) == "nobody yet");
}

TEST_CASE("the top waits for one strike-off only while its oldest batch is usable", "[schedule]") {
  const Job job = potting_bench_job();
  Plan plan = potting_bench_plan();  // ends at 22 min, usable 12
  const Task behind = find_task(make_schedule(job, plan), "Strike off while pouring");
  CHECK(in_minutes(behind.start) == Approx(12));
  CHECK(in_minutes(behind.end) == Approx(22));
  plan.pour.usable = minutes(22);
  CHECK(tasks_beginning(make_schedule(job, plan), "Strike off the whole top") == 1);
  plan.pour.usable = minutes(21.9);
  CHECK(tasks_beginning(make_schedule(job, plan), "Strike off the whole top") == 0);
  plan.pour.usable = std::nullopt;
  CHECK(tasks_beginning(make_schedule(job, plan), "Strike off the whole top") == 0);
}

TEST_CASE("the whole top is trowelled at once when one window covers every zone", "[schedule]") {
  const Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  // The last zone opens at 15 + 20 = 35 min, the first closes at 40.
  const auto whole = make_schedule(job, plan);
  CHECK(tasks_beginning(whole, "Trowel the whole top") == 1);
  CHECK(in_minutes(find_task(whole, "Trowel the whole top").start) == Approx(35));
  CHECK(in_minutes(find_task(whole, "Trowel the whole top").end) == Approx(40));

  set_batches(plan, 6, minutes(5), minutes(7));  // the last zone opens at 45
  const auto zones = make_schedule(job, plan);
  CHECK(tasks_beginning(zones, "Trowel zone") == 6);
  CHECK(in_minutes(find_task(zones, "Trowel zone 2").start) == Approx(25));
  CHECK(in_minutes(find_task(zones, "Trowel zone 2").end) == Approx(45));
}

TEST_CASE("no time is invented where the label is silent", "[schedule]") {
  Job job = potting_bench_job();
  job.mix.final_set = job.mix.strip_after = job.mix.sand_after = std::nullopt;
  job.mix.seal_after = job.mix.full_service = std::nullopt;
  const auto tasks = make_schedule(job, potting_bench_plan());
  const Task strip = find_task(tasks, "Strip the forms");
  CHECK(mentions(strip, "not before the label's time"));
  CHECK(strip.start == strip.end);
  CHECK(mentions(find_task(tasks, "Trowel zone 1"), "final set on the bag's data sheet"));
  Plan unknown = potting_bench_plan();
  unknown.pour.working_time = unknown.pour.usable = unknown.pour.margin = std::nullopt;
  CHECK(mentions(make_schedule(job, unknown)[0], "the bag does not say"));
}

TEST_CASE("label times count from the end of the pour", "[schedule]") {
  const auto tasks = make_schedule(potting_bench_job(), potting_bench_plan());
  CHECK(in_minutes(find_task(tasks, "Strip the forms").start) == Approx(22 + 60));
  CHECK(in_minutes(find_task(tasks, "Sand").start) == Approx(22 + 120));
  CHECK(in_minutes(find_task(tasks, "Seal, two").start) == Approx(22 + 24 * 60));
  CHECK(in_days(find_task(tasks, "First full use").start) == Approx(28 + 22.0 / 1440));
}

// Seven days moist for ordinary cement: ACI 308R and ACI 318, from memory.
TEST_CASE("an ordinary mix stays wet for seven days and a rapid one for an hour", "[schedule]") {
  Job job = potting_bench_job();
  const auto wet = [&] {
    const Task task = find_task(make_schedule(job, potting_bench_plan()), "Keep the top wet");
    return in_hours(task.end - task.start);
  };
  CHECK(wet() == Approx(1));
  job.mix.strip_after = hours(11.9);
  CHECK(wet() == Approx(1));
  job.mix.strip_after = hours(12);
  CHECK(wet() == Approx(7 * 24));
  job.mix.strip_after = std::nullopt;
  CHECK(wet() == Approx(7 * 24));
}

TEST_CASE("sealing waits for the end of the wet cure", "[schedule]") {
  Job job = potting_bench_job();
  job.mix.strip_after = hours(24);
  job.mix.seal_after = days(2);
  const auto tasks = make_schedule(job, potting_bench_plan());
  CHECK(find_task(tasks, "Seal, two").start >= find_task(tasks, "Keep the top wet").end);
}

TEST_CASE("local times follow the start time across midnight", "[schedule]") {
  using namespace std::chrono;
  Job job = potting_bench_job();
  CHECK_FALSE(make_schedule(job, potting_bench_plan())[0].start_local);
  job.date = StartDate{year{2026} / May / 31, std::nullopt};
  CHECK_FALSE(make_schedule(job, potting_bench_plan())[0].start_local);
  job.date->time = 23h + 55min;
  const auto tasks = make_schedule(job, potting_bench_plan());
  CHECK(tasks[0].start_local == "2026-05-30T23:55:00");
  CHECK(find_task(tasks, "Batch 3: ").start_local == "2026-06-01T00:05:00");
  CHECK(find_task(tasks, "Batch 3: ").end_local == "2026-06-01T00:12:00");
}

TEST_CASE("tasks for parts the job does not have are left out", "[schedule]") {
  Job job = potting_bench_job();
  Plan plan = potting_bench_plan();
  CHECK(tasks_beginning(make_schedule(job, plan), "Fix the knock-outs") == 0);
  CHECK(tasks_beginning(make_schedule(job, plan), "Wet the panels") == 1);
  job.slabs.front().panel = std::nullopt;
  CHECK(tasks_beginning(make_schedule(job, plan), "Wet the panels") == 0);
}
